using SwingStudy.Storage.Tables;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Tables;

/// <summary>History that is taken away for the erasure of a person.</summary>
public sealed class CollapseTests : IDisposable
{
    private readonly TemporaryStudy _study = new();
    private readonly DeltaTable _swings;

    public CollapseTests()
    {
        _swings = _study.Tables.Table(Some.Swings);
        var leaver = _swings.File("P01", "u", Some.Rows("P01", 2));
        _swings.Add(leaver);
        _swings.Add(_swings.File("P02", "v", Some.Rows("P02", 3)));
        Some.Value(_swings.Commit(new TableChange { Removes = [leaver.Path], Info = Some.Info }));
    }

    public void Dispose() => _study.Dispose();

    [Fact]
    public void TheNewestStateIsAllThatStays()
    {
        Assert.Equal(0, _swings.OldestVersion);
        Assert.Equal(3, _swings.CollapseHistory(Some.Info));
        var again = _study.Tables.Existing("swings")!;
        Assert.Equal((3, 3), (again.CurrentVersion, again.OldestVersion));
        Assert.Equal(3, Assert.Single(again.History()).Version);
        Assert.Equal(3, again.Read(columns: ["participant"]).Sum(rows => rows.Count));
        Assert.Throws<ArgumentOutOfRangeException>(() => again.Files(1));
        Assert.Equal(["00000000000000000003.checkpoint.parquet", "00000000000000000003.json", "_last_checkpoint"],
            Directory.GetFiles(Path.Combine(again.Root, "_delta_log")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Single(Directory.GetFiles(again.Root, "*.parquet", SearchOption.AllDirectories), file => !file.Contains("_delta_log", StringComparison.Ordinal));
        Assert.False(Directory.Exists(Path.Combine(again.Root, "participant=P01")));
    }

    [Fact]
    public void TheTableGoesOnFromThere()
    {
        _swings.CollapseHistory(Some.Info);
        _swings.CollapseHistory(Some.Info);
        var table = _study.Tables.Table(Some.Swings);
        table.Add(table.File("P03", "w", Some.Rows("P03", 4)));
        Assert.Equal(5, table.CurrentVersion);
        Assert.Equal(7, table.Read().Sum(rows => rows.Count));
        Assert.Equal(3, table.Read(version: 4).Sum(rows => rows.Count));
    }
}
