using System.Text;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Storage.Identities;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Identities;

public sealed class VaultTests : IDisposable
{
    private const string Passphrase = "seven invented herons";
    private static readonly ParticipantId P01 = new("P01");
    private static readonly ParticipantId P02 = new("P02");
    private readonly TemporaryStudy _study = new();

    public VaultTests()
    {
        using var store = Open();
        Some.Value(store.Add(P01, "Quentin Zweistein"));
        Assert.Null(store.SetNames(P01, new PersonNames("Quentin Zweistein", "zweistein@invented.example")));
        Assert.Null(store.CreateVault(Passphrase));
    }

    public void Dispose() => _study.Dispose();

    /// <summary>Outside check: the reference implementation's own test of Argon2id, version 19, two passes over 64 MiB, one lane (from memory).</summary>
    [Fact]
    public void TheKeyIsThatOfTheReferenceImplementation() =>
        Assert.Equal("09316115d5cf24ed5a15a31a3ba326e5cf32edc24702987c02b6566f61913cf7",
            Convert.ToHexStringLower(new PassphraseKey(1 << 16, 2).Derive("password", Encoding.ASCII.GetBytes("somesalt"))));

    [Fact]
    public void NothingStandsInClearOnceThereIsAVault()
    {
        Assert.DoesNotContain("weistein", Files(), StringComparison.OrdinalIgnoreCase);
        using var store = Open();
        Assert.Equal(VaultState.Locked, store.Vault);
        Assert.Equal(new PersonNames(null, null), store.Names(P01));
        Assert.Empty(store.Aliases(P01));
        Assert.Null(store.Unlock(Passphrase));
        Assert.Equal(new PersonNames("Quentin Zweistein", "zweistein@invented.example"), store.Names(P01));
        Assert.Equal(["Quentin Zweistein"], store.Aliases(P01));
    }

    [Fact]
    public void AliasesAreFoundWhileItIsLocked()
    {
        using var store = Open();
        Assert.Equal(P01, store.Resolve(" quentin  ZWEISTEIN"));
        Some.Value(store.Add(P01, "QZ-1"));
        Assert.Equal(P01, store.Resolve("qz-1"));
        Assert.Equal(2, store.AliasCount(P01));
        Assert.Equal("vault-locked", store.SetNames(P01, new PersonNames("Other", null))!.Code);
    }

    [Theory]
    [InlineData("")]
    [InlineData("seven invented heronz")]
    [InlineData("Seven invented herons")]
    public void AWrongPassphraseSaysNothingAndWritesNothing(string wrong)
    {
        var before = Files();
        using (var store = Open())
        {
            var problem = store.Unlock(wrong)!;
            Assert.Equal("vault-not-opened", problem.Code);
            Assert.DoesNotContain("P01", problem.ToString(), StringComparison.Ordinal);
            Assert.Equal(VaultState.Locked, store.Vault);
            Assert.Equal("vault-locked", store.ChangePassphrase("another passphrase of mine")!.Code);
            Assert.Equal("vault-locked", store.RotateKeys("another passphrase of mine")!.Code);
        }

        Assert.Equal(before, Files());
    }

    [Fact]
    public void AnotherPassphraseOpensItAndTheOldOneNoMore()
    {
        using var store = Open();
        Assert.Null(store.Unlock(Passphrase));
        Assert.Equal("vault-passphrase-short", store.ChangePassphrase("short")!.Code);
        Assert.Null(store.ChangePassphrase("eight invented herons"));
        using var again = Open();
        Assert.Equal("vault-not-opened", again.Unlock(Passphrase)!.Code);
        Assert.Null(again.Unlock("eight invented herons"));
        Assert.Equal("Quentin Zweistein", again.Names(P01).Name);
    }

    [Fact]
    public void NewKeysKeepTheTextsAndChangeEveryByteOfThem()
    {
        using var store = Open();
        Assert.Null(store.Unlock(Passphrase));
        Assert.Null(store.RotateKeys(Passphrase));
        Assert.Equal("Quentin Zweistein", store.Names(P01).Name);
        using var again = Open();
        Assert.Null(again.Unlock(Passphrase));
        Assert.Equal(["Quentin Zweistein"], again.Aliases(P01));
        Assert.Equal(P01, again.Resolve("Quentin Zweistein"));
    }

    [Fact]
    public void ABackupBringsNamesBackButNobodyWhoWasErasedSince()
    {
        var file = Path.Combine(_study.Folder.Root, "backup.db");
        using var store = Open();
        Assert.Null(store.Unlock(Passphrase));
        Some.Value(store.Add(P02, "Lena Erfunden"));
        Assert.Null(store.SetNames(P02, new PersonNames("Lena Erfunden", null)));
        Assert.Null(store.Backup(file));
        Assert.Equal("file-exists", store.Backup(file)!.Code);
        store.Forget(P01);
        Assert.Null(store.SetNames(P02, new PersonNames("Wrong Name", null)));

        Assert.Equal("vault-not-opened", store.Restore(file, "another passphrase of mine")!.Code);
        Assert.Equal("Wrong Name", store.Names(P02).Name);
        Assert.Null(store.Restore(file, Passphrase));

        Assert.Equal("Lena Erfunden", store.Names(P02).Name);
        Assert.Null(store.Resolve("Quentin Zweistein"));
        Assert.Null(store.Names(P01).Name);
        Assert.True(store.IsErased("quentin zweistein"));
        Assert.True(store.IsErased("P01"));
        Assert.Equal("person-erased", Some.Problem(store.Add(P02, "Quentin Zweistein")).Code);
    }

    [Fact]
    public void ABackupOfAnotherStudyIsNone()
    {
        using var other = new TemporaryStudy();
        var file = Path.Combine(_study.Folder.Root, "other.db");
        using (var store = new IdentityStore(other.Folder))
        {
            Assert.Null(store.CreateVault(Passphrase));
            Assert.Null(store.Backup(file));
        }

        using var own = Open();
        Assert.Equal("vault-backup-unreadable", own.Restore(file, Passphrase)!.Code);
        File.WriteAllText(file, "no database");
        Assert.Equal("vault-backup-unreadable", own.Restore(file, Passphrase)!.Code);
    }

    private IdentityStore Open() => new(_study.Folder);

    private string Files() => string.Concat(Directory.GetFiles(_study.Folder.Root, "identities.db*").Order(StringComparer.Ordinal).Where(file => !file.EndsWith("-shm", StringComparison.Ordinal))
        .Select(file => Encoding.Latin1.GetString(File.ReadAllBytes(file))));
}
