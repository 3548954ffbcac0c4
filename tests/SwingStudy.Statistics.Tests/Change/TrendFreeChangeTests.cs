using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.Change;

public class TrendFreeChangeTests
{
    /// <summary>Sessions that differ by 0.5 in standard deviation, known without error, and swings that do not differ: a session mean varies by 0.25.</summary>
    private static readonly StudyNoise Known = new() { SessionStandardDeviation = 0.5, SessionDegreesOfFreedom = 1e9, SwingStandardDeviation = 1e-9, SwingDegreesOfFreedom = 1e9 };

    [Fact]
    public void ItIsTheCoefficientOfThePhaseBesideTheOneOfThePlace()
    {
        // Ordinary least squares of y on phase and place, the normal equations solved in exact fractions outside of this program: 1.075 and 0.475 a session.
        var free = Of([40.2, 41.1, 40.7], [43.0, 42.1, 44.4], StudyNoise.Unknown);
        Near.Equal(1.075, free.Left.Value, 1e-9);
        Near.Equal(0.475, free.Slope.Value, 1e-9);
        Near.Equal(3, free.Distance);
    }

    [Fact]
    public void TheErrorHoldsThatOfTheSlopeOverTheDistance()
    {
        // By hand: Var Δ = 0.25 (1/2 + 1/2); places are off their middles by 1/2, four times, so Var b = 0.25/1; D = 2: 0.25 + 4 · 0.25 = 1.25.
        var free = Of([40, 40], [42, 42], Known);
        Near.Equal(2, free.Left.Value);
        Near.Equal(0.5, free.Slope.StandardError, 1e-6);
        Near.Equal(Math.Sqrt(1.25), free.Left.StandardError, 1e-6);
    }

    [Fact]
    public void APureTrendLeavesNothing() => Near.Equal(0, Of([40, 41, 42], [43, 44, 45], Known).Left.Value, 1e-9);

    [Fact]
    public void PhasesThatAlternateLeaveNearlyAllAndSessionsBetweenPhasesCount()
    {
        var change = HonestChangeRule.Judge(new ChangeData([[40], [40], [40]], [[42], [42], [42]], 0), Known);
        PhaseSession[] alternating = [.. Enumerable.Range(0, 6).Select(i => new PhaseSession(i, i % 2, [i % 2 == 0 ? 40 : 42]))];
        Near.Equal(1, TrendFreeChange.Of(alternating, change).Distance);
        Near.Equal(2, TrendFreeChange.Of(alternating, change).Left.Value, 1e-9);
        PhaseSession[] apart = [.. Enumerable.Range(0, 9).Select(i => new PhaseSession(i, i < 3 ? 0 : i < 6 ? 2 : 1, [i < 3 ? 40 : 42]))];
        Near.Equal(6, TrendFreeChange.Of(apart, change).Distance);
    }

    [Fact]
    public void OneSessionOfEachPhaseTellsNothing()
    {
        var data = new ChangeData([[40]], [[42]], 0);
        var free = TrendFreeChange.Of([new(0, 0, [40]), new(1, 1, [42])], HonestChangeRule.Judge(data, Known));
        Assert.NotNull(free.Left.Undefined);
        Assert.NotNull(free.Slope.Undefined);
        Assert.NotNull(TrendFreeChange.Of([], HonestChangeRule.Judge(new ChangeData([], [], 0), Known)).Left.Undefined);
    }

    [Fact]
    public void ALargerChangeNeedsFewerSessions()
    {
        int? Needed(double size) => TrendFreeChange.SessionsToTell(HonestChangeRule.Judge(new ChangeData([[40], [40]], [[40 + size], [40 + size]], 0), Known), 10, 0.95, 40);
        Assert.True(Needed(4) < Needed(1));
        // n = 7: variance 0.5/7 + 42 · 0.25/48 = 0.29018, t(0.95, 11) = 1.7959 (Student's table), limit 0.9674; n = 6 gives 1.0696.
        Assert.Equal(7, Needed(1));
        Assert.Null(Needed(0.01));
        Assert.Null(Needed(0));
    }

    private static TrendFreeChange Of(double[] before, double[] after, StudyNoise noise)
    {
        var data = new ChangeData([.. before.Select(value => new[] { value })], [.. after.Select(value => new[] { value })], 0);
        return TrendFreeChange.Of([.. before.Concat(after).Select((value, i) => new PhaseSession(i, i < before.Length ? 0 : 1, [value]))], HonestChangeRule.Judge(data, noise));
    }
}
