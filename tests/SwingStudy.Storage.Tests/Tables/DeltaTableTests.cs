using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Tables;

public sealed class DeltaTableTests : IDisposable
{
    private readonly TemporaryStudy _study = new();

    private DeltaTable Swings => _study.Tables.Table(Some.Swings);

    public void Dispose() => _study.Dispose();

    [Fact]
    public void ATableWithoutCommitsHasNoVersionNoFilesAndNoRows()
    {
        Assert.Equal(-1, Swings.CurrentVersion);
        Assert.Empty(Swings.Files());
        Assert.Empty(Swings.Read());
        Assert.Empty(_study.Tables.Names());
        Assert.Null(_study.Tables.Existing("swings"));
    }

    [Fact]
    public void RowsComeBackAsTheyWereWritten()
    {
        var rows = Some.Rows("P01", 50);
        Assert.Equal(0, Swings.Add(Swings.File("P01", "session-1", rows)));
        Assert.Equal(rows.Text(), Assert.Single(Swings.Read()).Text());
    }

    [Fact]
    public void EachAppendIsOneRowGroupAndIsReadAsOneSet()
    {
        var table = Swings;
        using var writer = table.NewFile("P01", "u");
        writer.Append(Some.Rows("P01", 3));
        writer.Append(Some.Rows("P01", 0));
        writer.Append(Some.Rows("P01", 4));
        table.Add(writer.Complete());
        Assert.Equal([3, 4], table.Read().Select(rows => rows.Count));
    }

    [Fact]
    public void ColumnsArePickedInTheOrderAskedFor()
    {
        Swings.Add(Swings.File("P01", "u", Some.Rows("P01", 2)));
        var rows = Assert.Single(Swings.Read(columns: ["club_speed", "participant"]));
        Assert.Equal(["club_speed", "participant"], rows.Table.Columns.Select(column => column.Name));
        Assert.Equal(["P01", "P01"], rows.Texts("participant"));
    }

    [Fact]
    public void ReadingOnePartitionSkipsTheOthers()
    {
        Swings.Add(Swings.File("P01", "a", Some.Rows("P01", 2)), Swings.File("P02", "b", Some.Rows("P02", 3)), Swings.File(null, "c", Some.Rows(null, 1)));
        Assert.Equal(3, Assert.Single(Swings.Read(partition: "P02")).Count);
        Assert.Equal(6, Swings.Read().Sum(rows => rows.Count));
        Assert.Contains(Swings.Files(), file => file.Path.StartsWith("participant=__HIVE_DEFAULT_PARTITION__/c-", StringComparison.Ordinal));
    }

    [Fact]
    public void OlderVersionsStayReadable()
    {
        var first = Swings.File("P01", "u", Some.Rows("P01", 2));
        Swings.Add(first);
        var second = Swings.File("P01", "u", Some.Rows("P01", 5, start: 50));
        Swings.Commit(new TableChange { Adds = [second], ReplacedUnits = ["u"], Info = Some.Info });
        Assert.Equal(1, Swings.CurrentVersion);
        Assert.Equal(5, Swings.Read().Sum(rows => rows.Count));
        Assert.Equal(2, Swings.Read(version: 0).Sum(rows => rows.Count));
        Assert.Throws<ArgumentOutOfRangeException>(() => Swings.Files(2));
        Assert.Equal([first.Path], Swings.History()[1].Removed);
    }

    [Fact]
    public void TheSameFilesAgainMakeNoVersion()
    {
        var file = Swings.File("P01", "u", Some.Rows("P01", 2));
        Assert.Equal(0, Swings.Add(file));
        Assert.Equal(0, Swings.Add(Swings.File("P01", "u", Some.Rows("P01", 2))));
        Assert.Equal(0, Swings.CurrentVersion);
    }

    [Fact]
    public void TheSameRowsGiveTheSameBytes()
    {
        using var other = new TemporaryStudy();
        var first = Swings.File("P01", "u", Some.Rows("P01", 500));
        var second = other.Tables.Table(Some.Swings).File("P01", "u", Some.Rows("P01", 500));
        Assert.Equal(first.Path, second.Path);
        Assert.Equal(first.Statistics, second.Statistics);
        Assert.Equal(File.ReadAllBytes(Swings.FullPath(first)), File.ReadAllBytes(other.Tables.Table(Some.Swings).FullPath(second)));
    }

    [Fact]
    public void AnActThatCountsOnceIsNotRepeated()
    {
        var file = Swings.File("P01", "u", Some.Rows("P01", 2));
        Swings.Commit(new TableChange { Adds = [file], Info = Some.Info, Once = ("run", 7) });
        var again = Swings.Commit(new TableChange { Removes = [file.Path], Info = Some.Info, Once = ("run", 7) });
        Assert.Equal(0, Some.Value(again));
        Assert.Single(Swings.Files());
    }

    [Fact]
    public void ANewColumnIsMissingInOlderFiles()
    {
        Swings.Add(Swings.File("P01", "u", Some.Rows("P01", 2)));
        var grown = Some.Swings with { Columns = [.. Some.Swings.Columns, new("ball_speed", ColumnKind.Number, "Ball speed", "m/s")] };
        var table = _study.Tables.Table(grown);
        Assert.True(double.IsNaN(Assert.Single(table.Read()).Numbers("ball_speed")[1]));
        var rows = new RowSetBuilder(grown);
        rows.Add(("participant", "P02"), ("ball_speed", 60.5));
        table.Add(table.File("P02", "v", rows.Build()));
        Assert.Equal(8, table.DefinitionAt().Columns.Count);
        Assert.Equal(7, table.DefinitionAt(0).Columns.Count);
        Assert.Equal(60.5, table.Read(partition: "P02").Single().Numbers("ball_speed")[0]);
        Assert.Equal(8, _study.Tables.Existing("swings")!.Definition.Columns.Count);
        Assert.Equal("m/s", _study.Tables.Existing("swings")!.Definition["ball_speed"].Unit);
    }

    [Fact]
    public void AColumnNeverChangesItsKind()
    {
        Swings.Add(Swings.File("P01", "u", Some.Rows("P01", 2)));
        var changed = Some.Swings with { Columns = [.. Some.Swings.Columns.Select(c => c.Name == "sequence" ? c with { Kind = ColumnKind.Text } : c)] };
        var problem = Some.Problem(_study.Tables.Table(changed).Commit(new TableChange { Info = Some.Info }));
        Assert.Equal("table-column-kind", problem.Code);
    }

    [Fact]
    public void RowsOfAnotherPartitionAreRefused()
    {
        using var writer = Swings.NewFile("P02", "u");
        Assert.Throws<ArgumentException>(() => writer.Append(Some.Rows("P01", 1)));
    }

    [Fact]
    public void AnUnfinishedFileLeavesNothing()
    {
        using (var writer = Swings.NewFile("P01", "u"))
            writer.Append(Some.Rows("P01", 1));
        Assert.Empty(Directory.GetFiles(Swings.Root, "*", SearchOption.AllDirectories));
    }

    [Fact]
    public void ARangeSkipsFilesAndPicksRows()
    {
        Swings.Add(Swings.File("P01", "a", Some.Rows("P01", 20)), Swings.File("P02", "b", Some.Rows("P02", 20, start: 80)));
        var rows = Swings.Read(ranges: [new RowRange("club_speed", 80.5, 81)]).ToList();
        Assert.Equal([80.5, 80.75], Assert.Single(rows).Numbers("club_speed"));
        Assert.Empty(Swings.Read(ranges: [new RowRange("struck_at", 0, 1000)]));
    }

    [Fact]
    public void TheOriginalsOfAFileAreReadFromTheLogAndFromCheckpoints()
    {
        using (var writer = Swings.NewFile("P01", "first", "first second"))
        {
            writer.Append(Some.Rows("P01", 1));
            Swings.Add(writer.Complete());
        }

        Assert.Equal(["first", "second"], Assert.Single(_study.Tables.Table(Some.Swings).Files()).OriginalHashes);
        for (var i = 1; i <= 10; i++)
            Swings.Add(Swings.File("P02", $"u{i}", Some.Rows("P02", i)));
        File.Delete(Path.Combine(Swings.Root, "_delta_log", $"{0:D20}.json"));
        var reread = new TableStore(_study.Folder).Table(Some.Swings).Files();
        Assert.Equal(["first", "second"], reread.Single(file => file.Partition == "P01").OriginalHashes);
        Assert.Equal(["u1"], reread.First(file => file.Partition == "P02" && file.Rows == 1).OriginalHashes);
    }

    [Fact]
    public void ManyVersionsAreReadFromCheckpointsWhenTheLogBeforeThemIsGone()
    {
        for (var i = 0; i < 25; i++)
            Swings.Add(Swings.File($"P{i:00}", $"u {i}", Some.Rows($"P{i:00}", i + 1)));
        Swings.Commit(new TableChange { Removes = [Swings.Files()[0].Path], Info = Some.Info });
        var before = Swings.Files();
        for (var version = 0; version <= 20; version++)
            File.Delete(Path.Combine(Swings.Root, "_delta_log", $"{version:D20}.json"));
        Assert.Equal(before, Swings.Files());
        Assert.Equal(25, Swings.CurrentVersion);
        Assert.Equal(21, Swings.Files(20).Count);
        Assert.Equal("m/s", _study.Tables.Existing("swings")!.Definition["club_speed"].Unit);
    }
}
