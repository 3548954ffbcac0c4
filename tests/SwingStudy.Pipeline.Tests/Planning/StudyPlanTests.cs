using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Planning;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Statistics.Planning;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Tests.Planning;

public sealed class StudyPlanTests
{
    private static readonly OutcomeNoise Noise = new(0.5, 0.9, "Given.", false);

    // 1.96 √(2 (0.5²/m + 0.9²/(m k))): recomputed by hand from the formula of the smallest detectable change of a mean.
    [Theory]
    [InlineData(1, 10, 1.595)]
    [InlineData(2, 10, 1.128)]
    [InlineData(3, 10, 0.921)]
    [InlineData(3, 20, 0.863)]
    public void TheDetectableChangeIsThatOfTheFormula(int sessions, int swings, double detectable) =>
        Assert.Equal(detectable, StudyPlan.Detectable(Request(), sessions, swings), 0.0005);

    [Fact]
    public void EndlessSwingsLeaveTheScatterBetweenDays()
    {
        var row = StudyPlan.Of(Request()).Rows.First(row => row is { Sessions: 2, Swings: 20 });

        Assert.Equal(1.959964 * 0.5, row.Floor, 1e-6);
        Assert.True(row.Floor < row.Detectable);
        Assert.Equal(row.Floor, StudyPlan.Detectable(Request(), 2, 1_000_000), 0.001);
    }

    [Fact]
    public void WhereDaysScatterTooMuchMoreSwingsAreSaidNotToHelp()
    {
        var plan = StudyPlan.Of(Request() with { Change = 0.8 });

        Assert.Equal((2, 4, true), (plan.PlannedSessions, plan.LeastSessions, plan.SwingsCannotHelp));
        Assert.True(StudyPlan.Detectable(Request(), 3, 1_000_000) > 0.8);
        Assert.True(StudyPlan.Detectable(Request(), 4, 1_000_000) <= 0.8);
        Assert.False(StudyPlan.Of(Request() with { Change = 2 }).SwingsCannotHelp);
    }

    [Fact]
    public void SimulatedPowerIsThatOfTheNoncentralT()
    {
        var row = StudyPlan.Of(Request() with { Sessions = [8], Swings = [10], Replications = 20_000 }).Rows[0];

        var exact = PrePostPower.ClosedForm(new NoiseModel { Session = 0.5, Swing = 0.9 }, new StudySize { Players = 1, Sessions = 8, Swings = 10 }, 1);
        Assert.Equal(exact!.Value, row.PlayerPower!.Value, 0.01);
    }

    [Theory]
    [InlineData(Randomization.PhaseStart, DesignKind.PrePost, 1.0 / 20)]
    [InlineData(Randomization.Order, DesignKind.MultipleBaseline, 1.0 / 24)]
    [InlineData(Randomization.PhaseChanges, DesignKind.Withdrawal, 1.0 / 4)]
    [InlineData(Randomization.Alternation, DesignKind.Alternating, 1.0 / 6)]
    public void TheSmallestPIsThatOfTheDraw(string kind, DesignKind design, double smallest)
    {
        var plan = StudyPlan.Of(Request(kind, design) with { Sessions = [2, 3], Swings = [10], Replications = 100 });

        Assert.Equal(smallest, plan.Rows[0].SmallestPossibleP!.Value, 1e-12);
        Assert.NotNull(plan.Rows[0].DrawPower);
        if (kind is Randomization.PhaseStart or Randomization.Order or Randomization.PhaseChanges)
            Assert.Equal(plan.Rows[0].SmallestPossibleP!.Value, plan.Rows[1].SmallestPossibleP!.Value, 1e-12);
    }

    [Fact]
    public void WithoutADrawThereIsNoRandomizationTest() => Assert.All(StudyPlan.Of(Request()).Rows, row => Assert.Null(row.DrawPower));

    [Fact]
    public void MorePlayersFindAChangeMoreSurely()
    {
        var players = StudyPlan.Of(Request() with { Change = 0.8 }).Players;

        Assert.Equal(Enumerable.Range(2, 11), players.Select(row => row.Players));
        Assert.All(players, row => Assert.Equal(
            PrePostPower.ClosedForm(new NoiseModel { Session = 0.5, Swing = 0.9 }, new StudySize { Players = row.Players, Sessions = 2, Swings = 3 }, 0.8)!.Value, row.Power, 0.08));
    }

    [Fact]
    public void APlanIsTheSameEachTime() => Assert.Equivalent(StudyPlan.Of(Request()), StudyPlan.Of(Request()), strict: true);

    [Fact]
    public void AStudyGoesByItsOwnScatterOnceItHasSessions()
    {
        using var study = new TestStudy();
        var outcome = Some.Protocol.Outcomes[0] with { Noise = new ExpectedNoise(0.7, 1.1, "Guessed.") };
        Assert.Equal((0.7, "Guessed."), (OutcomeNoise.Of(outcome, study.Tables)!.Session, OutcomeNoise.Of(outcome, study.Tables)!.Source));

        var noise = study.Tables.Table(StudyTables.Noise);
        var rows = new RowSetBuilder(StudyTables.Noise);
        // 4 sessions of 10 in one phase: mean squares 10 and 1, so that the session variance is (10 - 1)/10.
        rows.Add(("participant", "P01"), ("outcome", "club_head_speed"), ("swings", 40), ("sessions", 4), ("phases", 1), ("session_ss", 30.0), ("swing_ss", 36.0), ("square_counts", 10.0));
        using (var writer = noise.NewFile("P01", "P01"))
        {
            writer.Append(rows.Build());
            TestStudy.Value(noise.Commit(new TableChange { Adds = [writer.Complete()], Info = new CommitInfo { Stage = "noise" } }));
        }

        var own = OutcomeNoise.Of(outcome, study.Tables)!;
        Assert.Equal((Math.Sqrt(0.9), 1.0, true), (own.Session, own.Swing, own.IsOwn));
    }

    [Fact]
    public void ADesignThatCannotTellTheWorthwhileChangeSaysSoForEachComparison()
    {
        var protocol = Some.Protocol with { Outcomes = [Some.Protocol.Outcomes[0] with { Noise = new ExpectedNoise(0.5, 0.9, "Given.") }, Some.Protocol.Outcomes[1]] };

        var change = Assert.Single(DetectableChange.Of(protocol, null));
        Assert.Equal(("club_head_speed", "with-cue", false), (change.Outcome, change.Contrast, change.CanAnswer));
        Assert.Equal(1.959964 * Math.Sqrt(2 * (0.125 + (0.81 / 6))), change.Detectable, 1e-6);
    }

    private static PlanRequest Request(string? kind = null, DesignKind design = DesignKind.PrePost) => new()
    {
        Protocol = Some.Protocol with
        {
            Design = design,
            Phases = kind == Randomization.PhaseChanges
                ? [.. Enumerable.Range(1, 4).Select(i => new Phase($"phase-{i}", i % 2 == 1 ? PhaseRole.Baseline : PhaseRole.Intervention, 2, 3, null, null, ""))]
                : Some.Protocol.Phases,
            Randomization = kind is null ? null : new(kind, 3, kind == Randomization.PhaseStart ? 22 : null, 1) { Sessions = kind == Randomization.PhaseChanges ? 9 : null },
        },
        Noise = Noise,
        Change = 1,
        Sessions = [2, 3],
        Swings = [10, 20],
        Players = 4,
        Replications = 500,
    };
}
