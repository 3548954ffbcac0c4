using SwingStudy.Domain.Studies;
using SwingStudy.Pipeline.Running;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Running;

public sealed class RunnerTests
{
    [Fact]
    public void ASecondRunFindsNothingToDoAndLeavesNoLedgerLine()
    {
        using var study = Small();
        Assert.True(study.Run().DidAnything);
        var (files, entries) = (study.OutputFiles(), study.Registry.Ledger.Entries().Count);

        var second = study.Run();

        Assert.False(second.DidAnything);
        Assert.All(second.Stages, stage => Assert.True(stage.Skipped > 0));
        Assert.Equal(files, study.OutputFiles());
        Assert.Equal(entries, study.Registry.Ledger.Entries().Count);
    }

    [Fact]
    public void WhatWaitsForARunIsToldUntilItRan()
    {
        using var study = Small();
        study.Run();
        Assert.Empty(study.Waiting());
        study.Swings("P02", 9, "cue", 44, 45, 46);

        Assert.Contains(("link", 1), study.Waiting());
        study.Run();
        Assert.Empty(study.Waiting());
    }

    [Fact]
    public void ANewSessionRerunsItsOwnUnitsAlone()
    {
        using var study = Small();
        study.Run();
        var session = study.Swings("P02", 9, "cue", 44, 45, 46);

        var run = study.Run();

        Assert.Equal([session.Id], Done(run, "measure"));
        Assert.Contains("20260916", Done(run, "link"));
        Assert.DoesNotContain(Done(run, "link"), unit => unit.StartsWith("P01", StringComparison.Ordinal));
        Assert.Equal(["P02"], Done(run, "screen"));
        Assert.Equal(["P02"], Done(run, "noise"));
    }

    [Fact]
    public void ACorrectedPhaseReachesTheSwings()
    {
        using var study = Small();
        study.Run();
        study.Session("P01", 0, "cue");

        study.Run();

        var swings = study.Rows("swings");
        Assert.All(swings.Texts("session").Zip(swings.Texts("phase")).Where(pair => pair.First == "P01-20260907-1"), pair => Assert.Equal("cue", pair.Second));
    }

    [Fact]
    public void ACrashBetweenCommitAndRegistryIsHealedByTheNextRun()
    {
        using var whole = Small();
        whole.Run();
        using var crashed = Small();
        crashed.Run();
        // As after a crash: the tables are committed, the registry knows of no run.
        using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={crashed.Setup.Folder.Registry};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "DELETE FROM stage_runs";
            command.ExecuteNonQuery();
        }

        var versions = crashed.Tables.Names().ToDictionary(name => name, name => crashed.Tables.Existing(name)!.CurrentVersion);
        Assert.True(crashed.Run().DidAnything);

        Assert.Equal(whole.OutputFiles(), crashed.OutputFiles());
        Assert.Equal(versions, crashed.Tables.Names().ToDictionary(name => name, name => crashed.Tables.Existing(name)!.CurrentVersion));
        Assert.False(crashed.Run().DidAnything);
    }

    [Fact]
    public void LostOutputsAreComputedAgain()
    {
        using var study = Small();
        study.Run();
        var files = study.OutputFiles();
        var links = study.Tables.Existing("links")!;
        TestStudy.Value(links.Commit(new() { Removes = [links.Files()[0].Path], Info = new() { Stage = "foreign" } }));

        study.Run();

        Assert.Equal(files, study.OutputFiles());
    }

    [Fact]
    public void EqualStudiesGiveEqualBytesHoweverTheWorkIsSpread()
    {
        using var one = Small();
        using var other = Small();
        one.Run(parallel: 1);
        other.Run(parallel: 2);
        Assert.Equal(one.OutputFiles(), other.OutputFiles());
        Assert.NotEmpty(one.OutputFiles());
    }

    [Fact]
    public void StagesSideBySideAreStoredAsThoseOneAfterAnother()
    {
        using var one = Small();
        using var other = Small();
        foreach (var day in new[] { 9, 11, 13 })
        {
            var (inTurn, sideBySide) = (one.Run(parallel: 1), other.Run(parallel: 4));
            Assert.Equal(inTurn.Stages.Select(Told), sideBySide.Stages.Select(Told));
            foreach (var study in new[] { one, other })
                study.Swings("P02", day, "cue", 44, 45, 46);
        }

        Assert.Equal(one.OutputFiles(), other.OutputFiles());
        Assert.Equal(
            one.Registry.StageRuns().Select(run => (run.Stage, run.Unit, run.InputHash, string.Join(' ', run.Outputs))),
            other.Registry.StageRuns().Select(run => (run.Stage, run.Unit, run.InputHash, string.Join(' ', run.Outputs))));
        Assert.Equal(one.Registry.Ledger.Entries().Select(entry => entry.Act), other.Registry.Ledger.Entries().Select(entry => entry.Act));
        foreach (var (table, commits) in Commits(one))
            Assert.Equal(commits, Commits(other)[table]);

        static string Told(StageReport stage) =>
            $"{stage.Stage}: {string.Join(' ', stage.Done)}; {stage.Skipped}; {string.Join(' ', stage.Removed)}; {string.Join(' ', stage.Versions.OrderBy(table => table.Key, StringComparer.Ordinal))}";

        static Dictionary<string, List<string>> Commits(TestStudy study) => study.Tables.Names().ToDictionary(name => name, name => study.Tables.Existing(name)!.History()
            .Select(version => string.Join(' ', version.Added.Select(file => file.Path).Concat(version.Removed).Concat(version.Info!.Inputs.Select(input => $"{input.Key}@{input.Value}")).Order(StringComparer.Ordinal)))
            .ToList());
    }

    [Fact]
    public void AFaultInOneStageStoresThoseBeforeItAndNoneAfterIt()
    {
        using var study = Small();
        var stages = Stages.All.Select(stage => stage.Declaration.Name == "effects" ? new FaultyStage(stage) : stage).ToList();

        var fault = Assert.Throws<AggregateException>(() => new PipelineRunner(stages).BringUpToDate(study.Setup, study.Registry, new RunRequest { Actor = "tester", Parallel = 4 }));

        Assert.All(fault.InnerExceptions, inner => Assert.IsType<TimeoutException>(inner));
        Assert.Equal(["link", "measure", "screen", "noise"], study.Registry.StageRuns().Select(run => run.Stage).Distinct());
        Assert.Null(study.Tables.Existing("trends"));
        Assert.DoesNotContain("run", study.Registry.Ledger.Entries().Select(entry => entry.Act));
        using var whole = Small();
        whole.Run();
        study.Run();
        Assert.Equal(whole.OutputFiles(), study.OutputFiles());
    }

    [Fact]
    public void SwingsOfASessionThatNoLongerExistsAreTakenOut()
    {
        using var study = Small();
        study.Run();
        var captures = study.Tables.Existing("captures")!;
        var gone = captures.Files().First(file => file.Partition == "P02");
        TestStudy.Value(captures.Commit(new() { Removes = [gone.Path], Info = new() { Stage = "erase" } }));

        study.Run();

        Assert.DoesNotContain("P02-20260907-1", study.Rows("swings").Texts("session"));
        Assert.Equal(18 - 3, study.Rows("swings").Count);
    }

    [Fact]
    public void OnlyOnePlayerIsBroughtUpToDateWhenAsked()
    {
        using var study = Small();
        var run = study.Run(participant: "P01");
        Assert.All(Done(run, "measure"), unit => Assert.StartsWith("P01", unit, StringComparison.Ordinal));
        study.Run();
        Assert.Equal(18, study.Rows("swings").Count);
        study.Run(participant: "P02");
        Assert.Equal(18, study.Rows("swings").Count);
    }

    [Fact]
    public void AnUnknownStageIsAProblemThatNamesTheStages()
    {
        using var study = Small();
        var outcome = new PipelineRunner(Stages.All).BringUpToDate(study.Setup, study.Registry, new RunRequest { Actor = "tester", Stage = "lnk" });
        var problem = Assert.Single(outcome.Problems);
        Assert.Equal("stage-unknown", problem.Code);
        Assert.Contains("link", problem.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void TheLedgerNamesTheRunWithoutPersonalValues()
    {
        using var study = Small();
        var run = study.Run();
        var entry = study.Registry.Ledger.Last()!;
        Assert.Equal("run", entry.Act);
        Assert.Contains(run.RunId, entry.Details, StringComparison.Ordinal);
        Assert.DoesNotContain("P01", entry.Details, StringComparison.Ordinal);
        Assert.Null(study.Registry.Ledger.Verify());
    }

    [Fact]
    public void ProgressTellsEveryUnit()
    {
        using var study = Small();
        var seen = new List<RunProgress>();
        var progress = new Collected(seen);
        new PipelineRunner(Stages.All).BringUpToDate(study.Setup, study.Registry, new RunRequest { Actor = "tester", Progress = progress, Parallel = 1 });
        var last = seen.Last(report => report.Stage == "link");
        Assert.Equal(last.Total, last.Done);
        Assert.Equal(seen.Count(report => report.Stage == "link"), last.Total);
    }

    private static TestStudy Small()
    {
        var study = new TestStudy();
        foreach (var (participant, lift) in new[] { ("P01", 0.0), ("P02", 2.0) })
        {
            study.Swings(participant, 0, "baseline", 40 + lift, 40.5, 41);
            study.Swings(participant, 2, "baseline", 40.2 + lift, 40.1, 41.3);
            study.Swings(participant, 4, "cue", 43 + lift, 43.5, 44);
        }

        return study;
    }

    private static IReadOnlyList<string> Done(RunReport run, string stage) => run.Stages.Single(report => report.Stage == stage).Done;

    private sealed class FaultyStage(Stage whole) : Stage
    {
        public override StageDeclaration Declaration => whole.Declaration;

        internal override BoundStage Bind(StudySetup setup) => whole.Bind(setup) with { Run = _ => throw new TimeoutException("The disk does not answer.") };
    }

    private sealed class Collected(List<RunProgress> seen) : IProgress<RunProgress>
    {
        public void Report(RunProgress value) => seen.Add(value);
    }
}
