using SwingStudy.Domain.Identifiers;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Originals;

public sealed class OriginalStoreTests : IDisposable
{
    private readonly TemporaryStudy _study = new();
    private readonly OriginalStore _store;

    public OriginalStoreTests() => _store = new OriginalStore(_study.Folder);

    public void Dispose() => _study.Dispose();

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void BytesAreStoredUnderTheirHash(bool keepFile)
    {
        var path = _study.File("inbox/plates/Doe Jane.csv", "abc");
        var stored = Some.Value(_store.Take(path, keepFile));
        // SHA-256 of "abc": FIPS 180-2, appendix B.1.
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", stored.Hash.ToString());
        Assert.Equal(3, stored.Size);
        Assert.False(stored.WasThere);
        Assert.Equal(keepFile, File.Exists(path));
        Assert.Equal("abc", File.ReadAllText(_store.PathOf(stored.Hash)));
        Assert.DoesNotContain("Doe", _store.PathOf(stored.Hash), StringComparison.Ordinal);
        Assert.Equal([stored.Hash], _store.All());
        Assert.Single(Directory.GetFiles(_study.Folder.Originals, "*", SearchOption.AllDirectories));
    }

    [Fact]
    public void TheSameBytesAgainAreStoredOnce()
    {
        Some.Value(_store.Take(_study.File("inbox/a.csv", "abc"), keepFile: false));
        var again = Some.Value(_store.Take(_study.File("inbox/b.csv", "abc"), keepFile: false));
        Assert.True(again.WasThere);
        Assert.False(File.Exists(Path.Combine(_study.Folder.Root, "inbox/b.csv")));
    }

    [Fact]
    public void StoredBytesAreReadOnly()
    {
        var stored = Some.Value(_store.Take(_study.File("inbox/a.csv", "abc"), keepFile: false));
        Assert.True(File.GetAttributes(_store.PathOf(stored.Hash)).HasFlag(FileAttributes.ReadOnly));
    }

    [Fact]
    public void AMissingFileIsAProblem() =>
        Assert.Equal("file-missing", Some.Problem(_store.Take(Path.Combine(_study.Folder.Root, "none.csv"), keepFile: true)).Code);

    [Fact]
    public void DamageIsFound()
    {
        var stored = Some.Value(_store.Take(_study.File("inbox/a.csv", "abc"), keepFile: false));
        Assert.Equal(stored.Hash, Some.Value(_store.Verify(stored.Hash)));
        var path = _store.PathOf(stored.Hash);
        File.SetAttributes(path, FileAttributes.Normal);
        File.WriteAllText(path, "abd");
        Assert.Equal("original-damaged", Some.Problem(_store.Verify(stored.Hash)).Code);
        Assert.Equal("original-missing", Some.Problem(_store.Verify(Sha256.Of("other"))).Code);
    }
}
