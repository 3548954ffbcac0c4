using CsCheck;
using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.Change;

public class ShareKeptTests
{
    [Fact]
    public void TheIntervalIsTheSetOfSharesThatFiellersPivotDoesNotReject()
    {
        // Invented session means. Limits by R 4 (stats::uniroot) as roots of (n − r d)² = t² Var(n − r d), variance pooled over the three phases, df 8.
        double[] before = [40.1, 40.9, 39.8, 40.6], withCue = [42.3, 42.9, 42.0, 42.6], later = [41.6, 42.2, 41.5];
        var share = StatisticCatalogue.Find(ShareKept.Method)!.Compute(new TidyInput
        {
            Values = [.. before, .. withCue, .. later],
            Conditions = [.. before.Select(_ => "before"), .. withCue.Select(_ => "cue"), .. later.Select(_ => "later")],
        });
        Near.Equal(0.6746032, share.Value, 1e-6);
        Near.Equal(0.3525384, share.Interval!.Value.Low, 1e-6);
        Near.Equal(1.040063, share.Interval.Value.High, 1e-6);
        Assert.Equal(8, share.DegreesOfFreedom);
    }

    [Fact]
    public void AChangeThatMayBeNoneHasNoShareWithLimits()
    {
        var share = ShareKept.Of(Difference(1, 0.8), Difference(0.5, 0.8), Difference(-0.5, 0.8));
        Near.Equal(0.5, share.Value);
        Assert.Null(share.Interval);
        Assert.NotNull(ShareKept.Of(Difference(0, 0.8), Difference(0.5, 0.8), Difference(0.5, 0.8)).Undefined);
        Assert.NotNull(ShareKept.Of(Estimate.NotDefined("", "none"), Difference(0.5, 0.8), Difference(0.5, 0.8)).Undefined);
    }

    [Fact]
    public void BothLimitsSatisfyThePivotAndHoldTheShareBetweenThem() => Gen.Select(Gen.Double[1, 5], Gen.Double[-2, 6], Gen.Double[0.05, 0.4], Gen.Double[0.05, 0.4], Gen.Double[0.05, 0.7])
        .Sample((change, later, se1, se2, se12) =>
        {
            var share = ShareKept.Of(Difference(change, se1), Difference(later, se2), Difference(later - change, se12));
            if (share.Interval is not { } interval)
                return;
            var covariance = Math.Clamp(((se1 * se1) + (se2 * se2) - (se12 * se12)) / 2, -se1 * se2, se1 * se2);
            var t = StudentT.Critical(0.95, 6);
            foreach (var r in new[] { interval.Low, interval.High })
                Near.Equal((later - (r * change)) * (later - (r * change)), t * t * ((se2 * se2) - (2 * r * covariance) + (r * r * se1 * se1)), 1e-6);
            Assert.True(interval.Low <= share.Value && share.Value <= interval.High);
        });

    private static Estimate Difference(double value, double error) => Estimate.Of("test", value, error, degreesOfFreedom: 6);
}
