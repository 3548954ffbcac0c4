using SwingStudy.Pipeline.Running;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Tests.Running;

public sealed class SharedRowsTests
{
    [Fact]
    public void AFileThatTwoStagesSeeWholeIsReadOnceAndEachGetsItsColumns()
    {
        using var study = Filled();
        var (tables, swings) = (new TableStore(study.Setup.Folder), Bound("swings"));
        var (first, second) = (swings[0], swings.First(input => !Names(input).SequenceEqual(Names(swings[0]))));
        var file = tables.Table(first.Table).Files()[0];
        var shared = new SharedRows(Stages(study), tables);
        var rows = shared.Read(first, file);
        File.Delete(tables.Table(first.Table).FullPath(file));

        var others = shared.Read(second, file);

        Assert.Equal(Names(first), rows.Table.Columns.Select(column => column.Name));
        Assert.Equal(Names(second), others.Table.Columns.Select(column => column.Name));
        Assert.Equal(file.Rows, others.Count);
        Assert.Same(rows.Texts("swing_id"), others.Texts("swing_id"));

        List<BoundInput> Bound(string table) => [.. Stages(study).SelectMany(stage => stage.Inputs).Where(input => input.Table.Name == table && input.Slice == Slice.SameParticipant)];
    }

    [Fact]
    public void RowsOfOneStageAloneAreReadAsOftenAsTheyAreAskedFor()
    {
        using var study = Filled();
        var tables = new TableStore(study.Setup.Folder);
        var input = Stages(study).Single(stage => stage.Declaration.Name == "link").Inputs.Single(input => input.Table.Name == "captures");
        var file = tables.Table(input.Table).Files()[0];
        var shared = new SharedRows(Stages(study), tables);
        Assert.Equal(file.Rows, shared.Read(input, file).Count);
        File.Delete(tables.Table(input.Table).FullPath(file));

        Assert.Throws<FileNotFoundException>(() => shared.Read(input, file));
    }

    [Fact]
    public async Task WhatStaysAsItIsIsReadAheadOfItsTurn()
    {
        using var study = Filled();
        var tables = new TableStore(study.Setup.Folder);
        var input = Stages(study).Single(stage => stage.Declaration.Name == "findings").Inputs.Single(input => input.Table.Name == "links");
        var files = tables.Table(input.Table).Files();
        var shared = new SharedRows(Stages(study), tables);

        await shared.ReadAhead([.. files.Select(file => ("links", file))]);

        foreach (var file in files)
            File.Delete(tables.Table(input.Table).FullPath(file));
        Assert.All(files, file => Assert.Equal(file.Rows, shared.Read(input, file).Count));
    }

    private static TestStudy Filled()
    {
        var study = new TestStudy();
        study.Swings("P01", 0, "baseline", 40, 41, 42);
        study.Swings("P01", 2, "cue", 44, 45, 46);
        study.Run();
        return study;
    }

    private static List<BoundStage> Stages(TestStudy study) => [.. Pipeline.Stages.All.Select(stage => stage.Bind(study.Setup))];

    private static IEnumerable<string> Names(BoundInput input) => input.Shape.Columns.Select(column => column.Name);
}
