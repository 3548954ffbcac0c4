using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Reliability;

namespace SwingStudy.Statistics.Tests.Change;

public class HonestChangeTests
{
    private static readonly double[] Swings = [40.1, 41.3, 39.8, 42.0, 40.7, 43.5, 44.1, 42.9, 43.3, 45.0];

    [Fact]
    public void WithOwnSessionsAloneItIsTheTTestOnSessionMeans()
    {
        // Four session means 40, 42 before and 45, 46 after: by hand S² = (2 + 0.5)/2, SE² = S² (1/2 + 1/2), t with 2 df.
        var data = new ChangeData([[39, 41], [41, 43]], [[44, 46], [45, 47]], 0);
        var change = HonestChangeRule.Judge(data, StudyNoise.Unknown);
        Assert.Equal(4.5, change.Estimate.Value!.Value, 12);
        Assert.Equal(Math.Sqrt(1.25), change.Estimate.StandardError!.Value, 12);
        Assert.Equal(2, change.Estimate.DegreesOfFreedom!.Value, 10);
        Assert.Equal(StudentT.TwoSided(4.5 / Math.Sqrt(1.25), 2), change.Estimate.P!.Value, 12);
        Assert.Equal(CannotTell.No, change.CannotTell);
    }

    [Fact]
    public void OneSessionInAPhaseWithoutAStudysSessionVarianceCannotTell()
    {
        var change = HonestChangeRule.Judge(new ChangeData([Swings], [[50, 51, 52, 53]], 0), StudyNoise.Unknown);
        Assert.Equal(CannotTell.OneSessionWithoutSessionVariance, change.CannotTell);
        Assert.Equal(ChangeLimit.UnknownSessionVariance, change.LimitedBy);
        Assert.NotNull(change.Estimate.Value);
        Assert.Null(change.Estimate.StandardError);
        Assert.Null(change.SmallestDetectableChange);
        Assert.NotNull(change.SwingStandardError);
    }

    [Fact]
    public void AnEmptyPhaseIsUndefinedWithItsReason()
    {
        var change = HonestChangeRule.Judge(new ChangeData([], [[50, 51]], 0), StudyNoise.Unknown);
        Assert.Equal(CannotTell.PhaseWithoutSwings, change.CannotTell);
        Assert.NotNull(change.Estimate.Undefined);
    }

    [Fact]
    public void TheSmallestDetectableChangeTendsToTheTextbookOneWhenTheNoiseIsWellKnown()
    {
        // y = phase + session + swing, session 0.5, swing 0.9, 3 sessions of 10 swings: 1.96 √(2 (0.25/3 + 0.81/30)) = 0.921.
        var components = new VarianceComponents("given", 1, 0.25, 0.81, false);
        Assert.Equal(0.921, components.SmallestDetectableChange(3, 10), 3);
        Assert.Equal(1.595, components.SmallestDetectableChange(1, 10), 3);
        Assert.Equal(1.128, components.SmallestDetectableChange(2, 10), 3);
        Assert.Equal(0.863, components.SmallestDetectableChange(3, 20), 3);

        var noise = new StudyNoise { SessionStandardDeviation = 0.5, SessionDegreesOfFreedom = 1e9 };
        var alternating = Enumerable.Range(0, 10).Select(i => (i % 2 == 0 ? 0.9 : -0.9) * Math.Sqrt(9 / 10.0)).ToArray();
        var change = HonestChangeRule.Judge(new ChangeData([alternating, alternating, alternating], [alternating, alternating, alternating], 0), noise);

        Assert.Equal(0.921, Normal.Quantile(0.975) * change.Estimate.StandardError!.Value, 3);

        // Days are known without end, but swings by 6 · 9 = 54 degrees of freedom: by hand ν = (1/6 + 0.054)²/(0.054²/54).
        Assert.Equal(Math.Pow((1 / 6.0) + 0.054, 2) / (0.054 * 0.054 / 54), change.Estimate.DegreesOfFreedom!.Value, 2);
        Assert.Equal(0.922, change.SmallestDetectableChange!.Value, 3);
    }

    [Fact]
    public void MoreSwingsInOneDayCannotBeatTheDayToDayFloor()
    {
        var noise = new StudyNoise { SessionStandardDeviation = 0.5, SessionDegreesOfFreedom = 20 };
        var many = Enumerable.Range(0, 400).Select(i => (double)(i % 2)).ToArray();
        var change = HonestChangeRule.Judge(new ChangeData([many], [many], 0), noise);
        Assert.True(change.Estimate.StandardError >= 0.5 * Math.Sqrt(2));
        Assert.Equal(ChangeLimit.Sessions, change.LimitedBy);
    }

    [Fact]
    public void SwappingPhasesFlipsTheSignAndNothingElse()
    {
        var (before, after) = (Sessions(3, 8, 1), Sessions(2, 12, 2));
        var noise = new StudyNoise { SessionStandardDeviation = 0.4, SessionDegreesOfFreedom = 12 };
        var forward = HonestChangeRule.Judge(new ChangeData(before, after, 0), noise, 0.5);
        var back = HonestChangeRule.Judge(new ChangeData(after, before, 0), noise, 0.5);
        Assert.Equal(forward.Estimate.Value!.Value, -back.Estimate.Value!.Value, 12);
        Assert.Equal(forward.Estimate.StandardError!.Value, back.Estimate.StandardError!.Value, 12);
        Assert.Equal(forward.ProbabilityAboveWorthwhile!.Value, back.ProbabilityBelowWorthwhile!.Value, 12);
    }

    [Fact]
    public void ShiftAndScaleOfTheValuesShiftAndScaleTheAnswer()
    {
        var (before, after) = (Sessions(3, 8, 3), Sessions(3, 8, 4));
        var plain = HonestChangeRule.Judge(new ChangeData(before, after, 0), StudyNoise.Unknown, 0.5);
        double[][] Moved(double[][] sessions) => [.. sessions.Select(s => s.Select(x => (2 * x) + 1e6).ToArray())];
        var moved = HonestChangeRule.Judge(new ChangeData(Moved(before), Moved(after), 0), StudyNoise.Unknown, 1);
        Assert.Equal(2 * plain.Estimate.Value!.Value, moved.Estimate.Value!.Value, 8);
        Assert.Equal(2 * plain.Estimate.StandardError!.Value, moved.Estimate.StandardError!.Value, 8);
        Assert.Equal(plain.ProbabilityAboveWorthwhile!.Value, moved.ProbabilityAboveWorthwhile!.Value, 8);
    }

    [Fact]
    public void SerialDependenceIsFoundWhereItIsAndWidensTheSwingFloor()
    {
        var random = new Xoshiro256(11);
        var dependent = Enumerable.Range(0, 40).Select(_ => Autoregressive(random, 20, 0.5)).ToArray();
        var independent = Enumerable.Range(0, 40).Select(_ => Autoregressive(random, 20, 0)).ToArray();
        var (found, none) = (SerialDependence.Of(dependent), SerialDependence.Of(independent));
        Assert.InRange(found.Lag1!.Value, 0.43, 0.57);
        Assert.InRange(none.Lag1!.Value, -0.07, 0.07);

        // V(k) for an autoregression of order one tends to (1 + ρ)/(1 − ρ) = 3 at ρ = 0.5.
        Assert.InRange(new SerialDependence(0.5, 0.5).Inflation(2000), 2.99, 3);
        Assert.InRange(found.EffectiveCount(20), 6, 10);
    }

    [Fact]
    public void NegativeDependenceNeverMakesTheAnswerSurer()
    {
        var alternating = Enumerable.Range(0, 30).Select(i => i % 2 == 0 ? 1.0 : -1.0).ToArray();
        Assert.Equal(0, SerialDependence.Of([alternating, alternating]).Shrunk);
    }

    [Fact]
    public void AStudysDependenceGuidesAPlayerWithFewSwings()
    {
        double[][] few = [[1, 2, 3]];
        Assert.Equal(0.4, SerialDependence.Of(few, 0.4).Shrunk);
        Assert.Equal(0, SerialDependence.Of(few).Shrunk);
    }

    [Fact]
    public void ASessionWithSwingsOfBothPhasesIsTold()
    {
        var data = ChangeData.Of([1, 2, 3, 4, 5, 6], [1, 1, 1, 1, 2, 2], [0, 0, 1, 1, 1, 1]);
        Assert.Equal(1, data.SharedSessions);
        Assert.Equal(1, HonestChangeRule.Judge(data, StudyNoise.Unknown).SharedSessions);
    }

    [Fact]
    public void DaysThatAreHardlyKnownDoNotMakeSwingsHardlyKnown()
    {
        // By hand: swings ±0.9 √(9/10) around their mean, σ_e² = 0.81, 10 a session; V ignores the negative dependence. A = 2, M = 0.0001 + 0.1 · 1 with
        // 20 degrees of freedom, 0.1 · 1 taken off with 200, and 0.081 of the player's own swings with 18.
        var noise = new StudyNoise { SessionStandardDeviation = 0.01, SessionDegreesOfFreedom = 20, SwingShare = 0.1, SwingStandardDeviation = 1, SwingDegreesOfFreedom = 200 };
        var alternating = Enumerable.Range(0, 10).Select(i => (i % 2 == 0 ? 0.9 : -0.9) * Math.Sqrt(9 / 10.0)).ToArray();
        var change = HonestChangeRule.Judge(new ChangeData([alternating], [alternating], 0), noise);
        double variance = 2 * (0.0001 + 0.081), spread = (0.2002 * 0.2002 / 20) + (0.2 * 0.2 / 200) + (0.162 * 0.162 / 18);
        Assert.Equal(Math.Sqrt(variance), change.Estimate.StandardError!.Value, 12);
        Assert.Equal(variance * variance / spread, change.Estimate.DegreesOfFreedom!.Value, 8);
        Assert.InRange(change.Estimate.DegreesOfFreedom!.Value, 6, 8);
        Assert.True(noise.ComponentDegreesOfFreedom < 0.001);
        Assert.True(change.SmallestDetectableChange < 1);
    }

    [Fact]
    public void ADifferenceTooSmallToBeKnownTakesNothingOff()
    {
        // Others hit 3 swings a session, the player 40: what is left of M for days, 0.0001 of 0.3334, has no degrees of freedom to speak of.
        var noise = new StudyNoise { SessionStandardDeviation = 0.01, SessionDegreesOfFreedom = 4, SwingShare = 1 / 3.0, SwingStandardDeviation = 1, SwingDegreesOfFreedom = 20 };
        var many = Enumerable.Range(0, 40).Select(i => i % 2 == 0 ? 1.0 : -1.0).ToArray();
        var change = HonestChangeRule.Judge(new ChangeData([many], [many], 0), noise);
        var swings = 40 / 39.0 / 40;
        Assert.Equal(Math.Sqrt(2 * (0.0001 + (1 / 3.0) + swings)), change.Estimate.StandardError!.Value, 12);
        Assert.InRange(change.Estimate.DegreesOfFreedom!.Value, 4, 5);
    }

    [Fact]
    public void OnePairOfSessionsOfOneOtherPlayerIsNoKnowledgeOfDays()
    {
        var noise = new StudyNoise { SessionStandardDeviation = 0.4, SessionDegreesOfFreedom = 1 };
        var change = HonestChangeRule.Judge(new ChangeData([Swings], [[50, 51, 52, 53]], 0), noise);
        Assert.Equal(CannotTell.OneSessionWithoutSessionVariance, change.CannotTell);
        Assert.Null(change.Estimate.Interval);

        // With a second session of the player's own there are two degrees of freedom, and both count.
        var own = HonestChangeRule.Judge(new ChangeData([Swings, [41, 42, 40]], [[50, 51, 52, 53]], 0), noise);
        Assert.Equal(CannotTell.No, own.CannotTell);
        Assert.NotNull(own.Estimate.Interval);
    }

    private static double[][] Sessions(int count, int swings, ulong seed)
    {
        var random = new Xoshiro256(seed);
        return [.. Enumerable.Range(0, count).Select(s => Enumerable.Range(0, swings).Select(_ => 40 + s + Normal.Quantile(random.NextUnit())).ToArray())];
    }

    private static double[] Autoregressive(Xoshiro256 random, int count, double rho)
    {
        var values = new double[count];
        var previous = Normal.Quantile(random.NextUnit());
        for (var i = 0; i < count; i++)
            values[i] = previous = (rho * previous) + (Math.Sqrt(1 - (rho * rho)) * Normal.Quantile(random.NextUnit()));
        return values;
    }
}
