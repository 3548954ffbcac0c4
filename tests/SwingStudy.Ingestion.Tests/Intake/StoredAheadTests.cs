using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Studies;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Storage.Originals;

namespace SwingStudy.Ingestion.Tests.Intake;

public sealed class StoredAheadTests : IDisposable
{
    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory();
    private readonly OriginalStore _originals;

    public StoredAheadTests() => _originals = new OriginalStore(new StudyFolder(_root.FullName));

    public void Dispose()
    {
        _originals.Dispose();
        _root.Delete(recursive: true);
    }

    [Fact]
    public void EveryFileGetsItsOwnHashInOrderAndStaysWhereItLay()
    {
        Candidate[] files = [.. Enumerable.Range(0, 30).Select(i => File($"{i}.csv", $"bytes {i}"))];
        using (var ahead = new StoredAhead(_originals, files))
        {
            foreach (var file in files)
                Assert.Equal(Sha256.Of(System.IO.File.ReadAllBytes(file.Path)), ahead.Take(file).Value!.Hash);
        }

        Assert.Equal(files.Length, _originals.All().Count());
    }

    [Fact]
    public void BytesThatWereTakenAwayMeanwhileAreStoredAgain()
    {
        Candidate[] files = [File("a.csv", "the same"), File("b.csv", "the same")];
        using var ahead = new StoredAhead(_originals, files);
        var hash = ahead.Take(files[0]).Value!.Hash;
        // Storing the second began with the first; whether it came before or after this, its bytes must be there.
        _originals.Remove(hash);
        Assert.Equal(hash, ahead.Take(files[1]).Value!.Hash);
        Assert.True(_originals.Contains(hash));
    }

    [Fact]
    public void FilesThatTheRunDoesNotComeToLieWhereTheyLay()
    {
        Candidate[] files = [File("a.csv", "a"), File("b.csv", "b"), File("c.csv", "c")];
        using (var ahead = new StoredAhead(_originals, files))
            Assert.Empty(ahead.Take(files[0]).Problems);
        Assert.All(files, file => Assert.True(System.IO.File.Exists(file.Path)));
    }

    [Fact]
    public void AFileOutOfTurnIsAFaultOfTheCaller()
    {
        Candidate[] files = [File("a.csv", "a"), File("b.csv", "b")];
        using var ahead = new StoredAhead(_originals, files);
        Assert.Throws<ArgumentException>(() => ahead.Take(files[1]));
    }

    private Candidate File(string name, string content)
    {
        var path = Path.Combine(Directory.CreateDirectory(Path.Combine(_root.FullName, "inbox")).FullName, name);
        System.IO.File.WriteAllText(path, content);
        return new Candidate(name, path, CandidatePlace.Inbox, content.Length);
    }
}
