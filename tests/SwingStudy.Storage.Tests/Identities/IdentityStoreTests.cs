using SwingStudy.Domain.Identifiers;
using SwingStudy.Storage.Identities;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Identities;

public sealed class IdentityStoreTests : IDisposable
{
    private static readonly ParticipantId P01 = new("P01");
    private readonly TemporaryStudy _study = new();
    private readonly IdentityStore _store;

    public IdentityStoreTests() => _store = new IdentityStore(_study.Folder);

    public void Dispose()
    {
        _store.Dispose();
        _study.Dispose();
    }

    [Theory]
    [InlineData("  jose\u0301   ÁLVAREZ ")]
    [InlineData("José Álvarez")]
    [InlineData("JOSÉ ÁLVAREZ")]
    [InlineData("José\u00a0A\u0301lvarez")]
    public void SpellingsOfOneNameAreOneAlias(string spelling)
    {
        Some.Value(_store.Add(P01, "José Álvarez"));
        Assert.Equal(P01, _store.Resolve(spelling));
        Assert.Equal(_store.AliasHash("José Álvarez"), _store.AliasHash(spelling));
    }

    [Fact]
    public void AnAliasBelongsToOneParticipant()
    {
        Some.Value(_store.Add(P01, "Kim"));
        Assert.Equal("alias-taken", Some.Problem(_store.Add(new ParticipantId("P02"), "kim")).Code);
        Assert.Equal("alias-empty", Some.Problem(_store.Add(P01, "  ")).Code);
        Assert.Null(_store.Resolve("Lee"));
        Assert.Equal(["Kim"], _store.Aliases(P01));
    }

    [Fact]
    public void AnotherStudyGivesAnotherHash()
    {
        using var other = new TemporaryStudy();
        using var store = new IdentityStore(other.Folder);
        Assert.NotEqual(_store.AliasHash("Kim"), store.AliasHash("Kim"));
        using var again = new IdentityStore(_study.Folder);
        Assert.Equal(_store.AliasHash("Kim"), again.AliasHash("Kim"));
    }

    [Fact]
    public void AForgottenNameIsNoLongerInTheFile()
    {
        Some.Value(_store.Add(P01, "Quentin Zweistein"));
        Assert.Null(_store.SetNames(P01, new PersonNames("Quentin Zweistein", "phone")));
        Assert.Equal(new PersonNames("Quentin Zweistein", "phone"), _store.Names(P01));
        _store.Forget(P01);
        Assert.Null(_store.Names(P01).Name);
        var bytes = Directory.GetFiles(_study.Folder.Root, "identities.db*").Select(Read);
        Assert.All(bytes, text => Assert.DoesNotContain("weistein", text, StringComparison.Ordinal));
    }

    private static string Read(string path)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using var reader = new StreamReader(stream, System.Text.Encoding.Latin1);
        return reader.ReadToEnd();
    }
}
