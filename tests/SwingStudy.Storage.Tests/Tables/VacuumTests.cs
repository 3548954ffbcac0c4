using SwingStudy.Storage.Tables;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Tables;

public sealed class VacuumTests : IDisposable
{
    private readonly TemporaryStudy _study = new();
    private readonly DeltaTable _swings;
    private readonly DataFile _first;
    private readonly DataFile _second;

    public VacuumTests()
    {
        _swings = _study.Tables.Table(Some.Swings);
        _first = _swings.File("P01", "u", Some.Rows("P01", 2));
        _swings.Add(_first);
        _second = _swings.File("P01", "u", Some.Rows("P01", 3));
        _swings.Commit(new TableChange { Adds = [_second], ReplacedUnits = ["u"], Info = Some.Info });
    }

    public void Dispose() => _study.Dispose();

    [Fact]
    public void FilesOfKilledRunsGoAndEveryVersionStays()
    {
        var orphan = _swings.File("P01", "v", Some.Rows("P01", 4));
        var unfinished = _study.File("tables/swings/.0123.tmp", "half");
        Age(_swings.FullPath(orphan), unfinished, _swings.FullPath(_first), _swings.FullPath(_second));
        Assert.Equal([".0123.tmp", orphan.Path], _swings.Vacuum());
        Assert.Equal(2, _swings.Read(version: 0).Single().Count);
        Assert.Equal(3, _swings.Read().Single().Count);
    }

    [Fact]
    public void YoungFilesStay()
    {
        var orphan = _swings.File("P01", "v", Some.Rows("P01", 4));
        Assert.Empty(_swings.Vacuum());
        Assert.True(File.Exists(_swings.FullPath(orphan)));
    }

    [Fact]
    public void VersionsThatAreNotKeptLoseTheirFiles()
    {
        Assert.Empty(_swings.Vacuum(TimeSpan.Zero - TimeSpan.FromSeconds(5), keepVersions: [0]));
        Assert.Equal([_first.Path], _swings.Vacuum(TimeSpan.Zero - TimeSpan.FromSeconds(5), keepVersions: []));
        Assert.Equal(3, _swings.Read().Single().Count);
        Assert.Throws<ArgumentOutOfRangeException>(() => _swings.Vacuum(keepVersions: [7]));
    }

    private static void Age(params string[] files)
    {
        foreach (var file in files)
            File.SetLastWriteTimeUtc(file, TimeProvider.System.GetUtcNow().UtcDateTime - TimeSpan.FromDays(8));
    }
}
