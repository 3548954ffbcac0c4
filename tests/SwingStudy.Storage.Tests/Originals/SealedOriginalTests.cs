using System.Text;
using SwingStudy.Storage.Identities;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Originals;

/// <summary>Originals of a study with a vault: put away by anybody, read by whoever has the passphrase.</summary>
public sealed class SealedOriginalTests : IDisposable
{
    private const string Passphrase = "seven invented herons";
    private readonly TemporaryStudy _study = new();
    private readonly IdentityStore _identities;
    private readonly OriginalStore _store;

    public SealedOriginalTests()
    {
        _identities = new IdentityStore(_study.Folder);
        _store = new OriginalStore(_study.Folder, () => _identities.OriginalKeys);
    }

    public void Dispose()
    {
        _store.Dispose();
        _identities.Dispose();
        _study.Dispose();
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(SealedFile.BlockBytes)]
    [InlineData((2 * SealedFile.BlockBytes) + 1)]
    public void WhatIsPutAwayComesBackWhateverItsLength(int length)
    {
        Assert.Null(_identities.CreateVault(Passphrase));
        var content = Bytes(length);
        var hash = _store.Put(content);
        Assert.Equal(content, Some.Value(_store.ReadAll(hash)));
        Assert.Equal(content, File.ReadAllBytes(Some.Value(_store.Reach(hash))));
        Assert.Equal(hash, Some.Value(_store.Verify(hash)));
        Assert.EndsWith(".sealed", _store.PathOf(hash), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ALockedStudyPutsFilesAwayAndReadsWhatItJustTook(bool adopt)
    {
        Assert.Null(_identities.CreateVault(Passphrase));
        using var identities = new IdentityStore(_study.Folder);
        Assert.Equal(VaultState.Locked, identities.Vault);
        var path = _study.File("inbox/bay/a.csv", "Quilliam Zebedee,41");
        var store = new OriginalStore(_study.Folder, () => identities.OriginalKeys);
        var taken = Some.Value(adopt ? store.Adopt(path) : store.Take(path, keepFile: false));
        Assert.Equal("Quilliam Zebedee,41".Length, taken.Size);
        Assert.Equal(adopt, File.Exists(path));
        Assert.Equal("Quilliam Zebedee,41", File.ReadAllText(Some.Value(store.Reach(taken.Hash))));
        store.Dispose();

        // Nothing in clear is left, and another run needs the passphrase.
        Assert.All(Directory.EnumerateFiles(_study.Folder.Originals, "*", SearchOption.AllDirectories),
            file => Assert.DoesNotContain("Zebedee", Encoding.Latin1.GetString(File.ReadAllBytes(file)), StringComparison.Ordinal));
        Assert.Equal([taken.Hash], _store.All());
        using var again = new OriginalStore(_study.Folder, () => identities.OriginalKeys);
        Assert.Equal("original-locked", Some.Problem(again.Reach(taken.Hash)).Code);
        Assert.Equal("original-locked", Some.Problem(again.Verify(taken.Hash)).Code);
        Assert.Null(identities.Unlock(Passphrase));
        Assert.Equal("Quilliam Zebedee,41", File.ReadAllText(Some.Value(again.Reach(taken.Hash))));
    }

    [Fact]
    public void WhatLayInClearIsEncryptedOnceThereIsAVault()
    {
        var hash = Some.Value(_store.Take(_study.File("inbox/a.csv", "abc"), keepFile: false)).Hash;
        Assert.Equal(0, _store.SealAll());
        Assert.Null(_identities.CreateVault(Passphrase));
        Assert.Equal(1, _store.SealAll());
        Assert.Equal(0, _store.SealAll());
        Assert.Equal("abc"u8.ToArray(), Some.Value(_store.ReadAll(hash)));
        Assert.Single(Directory.GetFiles(_study.Folder.Originals, "*", SearchOption.AllDirectories));
        Assert.True(Some.Value(_store.Take(_study.File("inbox/b.csv", "abc"), keepFile: false)).WasThere);
        _store.Remove(hash);
        Assert.False(_store.Contains(hash));
    }

    [Fact]
    public void ChangedCutOrExchangedBlocksAreFound()
    {
        Assert.Null(_identities.CreateVault(Passphrase));
        var hash = _store.Put(Bytes((2 * SealedFile.BlockBytes) + 5));
        var path = _store.PathOf(hash);
        var whole = File.ReadAllBytes(path);
        var block = SealedFile.TagBytes + SealedFile.BlockBytes;
        var head = whole.Length - (2 * block) - SealedFile.TagBytes - 5;
        byte[][] broken =
        [
            [.. whole[..^1], (byte)(whole[^1] ^ 1)],
            whole[..^1],
            whole[..(head + block)],
            whole[..(head + (2 * block))],
            whole[..head],
            [.. whole[..head], .. whole[(head + block)..(head + (2 * block))], .. whole[head..(head + block)], .. whole[(head + (2 * block))..]],
            [.. whole[..20], (byte)(whole[20] ^ 1), .. whole[21..]],
            [],
        ];
        File.SetAttributes(path, FileAttributes.Normal);
        foreach (var bytes in broken)
        {
            File.WriteAllBytes(path, bytes);
            Assert.Equal("original-damaged", Some.Problem(_store.Verify(hash)).Code);
        }

        // An original of the same study under the name of another opens, and has another hash.
        File.Copy(_store.PathOf(_store.Put(Bytes(9))), path, overwrite: true);
        Assert.Equal("original-damaged", Some.Problem(_store.Verify(hash)).Code);
    }

    [Fact]
    public void NewKeysAnotherPassphraseAndABackupLeaveOriginalsReadable()
    {
        Assert.Null(_identities.CreateVault(Passphrase));
        var hash = _store.Put("abc"u8.ToArray());
        var backup = Path.Combine(_study.Folder.Root, "backup.db");
        Assert.Null(_identities.Backup(backup));
        Assert.Null(_identities.RotateKeys(Passphrase));
        Assert.Equal("abc"u8.ToArray(), Some.Value(_store.ReadAll(hash)));
        Assert.Null(_identities.ChangePassphrase("eight invented herons"));
        using (var other = new IdentityStore(_study.Folder))
        {
            Assert.Null(other.Unlock("eight invented herons"));
            using var reader = new OriginalStore(_study.Folder, () => other.OriginalKeys);
            Assert.Equal("abc"u8.ToArray(), Some.Value(reader.ReadAll(hash)));
        }

        Assert.Null(_identities.Restore(backup, Passphrase));
        Assert.Equal("abc"u8.ToArray(), Some.Value(_store.ReadAll(hash)));
    }

    private static byte[] Bytes(int length)
    {
        var bytes = new byte[length];
        new Random(7).NextBytes(bytes);
        return bytes;
    }
}
