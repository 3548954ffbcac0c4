using System.Collections.Concurrent;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Running;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Running;

public sealed class StageDeclarationTests
{
    [Fact]
    public void EachStageUsesExactlyWhatItDeclares()
    {
        using var study = new TestStudy();
        foreach (var participant in new[] { "P01", "P02" })
        {
            study.Swings(participant, 0, "baseline", 40, 40.5, 41);
            study.Swings(participant, 2, "cue", 43, 43.5, 44);
        }

        var watched = Stages.All.Select(stage => new Watched(stage)).ToList();
        study.Run(stages: watched);

        foreach (var stage in watched)
        {
            SortedSet<string> declared =
            [
                .. stage.Declaration.Inputs.Select(input => input.Table), .. stage.Declaration.Outputs.Select(output => $"-> {output}"),
                .. stage.Declaration.Decisions, .. stage.Declaration.SeesSession ? ["session"] : Array.Empty<string>(),
            ];
            Assert.True(declared.SetEquals(stage.Used.Keys),
                $"Stage '{stage.Declaration.Name}' declares [{string.Join(", ", declared)}] and uses [{string.Join(", ", stage.Used.Keys.Order())}]: "
                + "what it does not use makes it run needlessly; take it out of the declaration.");
        }
    }

    [Fact]
    public void WhatIsNotDeclaredCannotBeSeen()
    {
        using var study = new TestStudy();
        study.Swings("P01", 0, "baseline", 40, 41);
        study.Run(stage: "link");
        Assert.Throws<AggregateException>(() => study.Run(stages: [new Nosy()]));
    }

    [Fact]
    public void EveryTableHasOneWriterThatComesBeforeItsReaders()
    {
        var written = new HashSet<string> { "captures", "curves", "capture_events", "rejects" };
        foreach (var stage in Stages.All.Select(stage => stage.Declaration))
        {
            Assert.All(stage.Inputs, input => Assert.Contains(input.Table, written));
            Assert.All(stage.Outputs, output => Assert.True(written.Add(output), $"two stages write {output}"));
        }
    }

    [Fact]
    public void SettingsOfAnotherStageDoNotRerunThisOne()
    {
        using var study = new TestStudy();
        study.Swings("P01", 0, "baseline", 40, 41);
        study.Run();
        study.Setup = study.Setup with { Protocol = study.Setup.Protocol with { Analysis = study.Setup.Protocol.Analysis with { Confidence = 0.9 } } };

        var run = study.Run();

        Assert.Empty(run.Stages.Where(stage => stage.Stage is "link" or "measure" or "screen" or "noise").SelectMany(stage => stage.Done));
        Assert.Equal(["P01"], run.Stages.Single(stage => stage.Stage == "effects").Done);
    }

    [Fact]
    public void EverySettingsRecordHasAJsonFormThatTellsItsValues()
    {
        var folder = new StudyFolder("/nowhere");
        foreach (var stage in Stages.All)
            Assert.True(stage.Bind(Some.Setup(folder)).Settings.Length > 10, stage.Declaration.Name);
    }

    private sealed class Watched(Stage inner) : Stage
    {
        public ConcurrentDictionary<string, bool> Used { get; } = [];

        public override StageDeclaration Declaration => inner.Declaration;

        internal override BoundStage Bind(StudySetup setup)
        {
            var bound = inner.Bind(setup);
            return bound with { Run = Run };

            IReadOnlyList<RowSet> Run(StageInput input)
            {
                var rows = bound.Run(input);
                foreach (var name in input.Used)
                    Used[name] = true;
                return rows;
            }
        }
    }

    private sealed class Nosy : Stage
    {
        public override StageDeclaration Declaration { get; } = new()
        {
            Name = "nosy",
            Title = "Nosy",
            Summary = "Looks at what it does not declare.",
            Unit = UnitOfWork.Participant,
            Inputs = [new("links", Slice.SameParticipant)],
            Outputs = [],
            CodeVersion = "1",
        };

        internal override BoundStage Bind(StudySetup setup) => new(
            Declaration, [new BoundInput(StudyTables.Links, Slice.SameParticipant, null)], new Dictionary<string, TableDefinition>(), "{}",
            input => [input.Rows("captures")]);
    }
}
