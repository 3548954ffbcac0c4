using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Audit;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Tests.Audit;

public sealed class RecomputationTests
{
    [Fact]
    public void WhatARunMadeComesOutTheSameAndTheStudyStaysAsItIs()
    {
        using var study = Ran();
        var (files, runs) = (study.OutputFiles(), study.Registry.StageRuns().Count);

        var checks = Recompute(study);

        Assert.All(checks, check => Assert.True(check.Passed));
        Assert.Equal(files.Count, checks.Sum(check => check.Examined));
        Assert.Equal(files, study.OutputFiles());
        Assert.Equal(runs, study.Registry.StageRuns().Count);
    }

    [Fact]
    public void AFileThatTheStageDidNotMakeIsFound()
    {
        using var study = Ran();
        var table = study.Tables.Table(StudyTables.Effects);
        using (var writer = table.NewFile("P01", "P01"))
        {
            writer.Append(study.Rows("effects").Select([0]));
            TestStudy.Value(table.Commit(new TableChange { Adds = [writer.Complete()], ReplacedUnits = ["P01"], Info = new CommitInfo { Stage = "effects" } }));
        }

        var broken = Recompute(study).Where(check => !check.Passed).ToList();

        // What was made from the rows that are gone differs as well.
        Assert.Equal(["recomputed effects", "recomputed group_effects"], broken.Select(check => check.Name));
        Assert.All(broken.SelectMany(check => check.Problems), problem => Assert.Equal("recomputed-differs", problem.Code));
        Assert.Equal(2, broken[0].Problems.Count);
    }

    private static TestStudy Ran()
    {
        var study = new TestStudy();
        study.Swings("P01", 0, "baseline", 40, 41, 42);
        study.Swings("P01", 7, "cue", 42, 43, 44);
        study.Run();
        return study;
    }

    private static List<AuditCheck> Recompute(TestStudy study)
    {
        var work = Directory.CreateTempSubdirectory("recompute-").FullName;
        try
        {
            return [.. new Recomputation(study.Setup, study.Registry, Stages.All).Run(work)];
        }
        finally
        {
            Directory.Delete(work, recursive: true);
        }
    }
}
