using CsCheck;
using SwingStudy.Statistics.EffectSizes;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Tests.EffectSizes;

public class EffectSizePropertyTests
{
    private static readonly Gen<double[]> Sample = Gen.Double[1, 50].Array[3, 20];

    private static readonly (string Name, Func<double[], double[], Estimate> Compute)[] Standardized =
    [
        ("g", (b, a) => HedgesG.Pooled(IndependentContrast.Of(b, a))),
        ("g large", (b, a) => HedgesG.PooledLargeSample(IndependentContrast.Of(b, a))),
        ("Glass", (b, a) => GlassDelta.Corrected(IndependentContrast.Of(b, a))),
        ("superiority", (b, a) => Dominance.Of(b, a).ProbabilityOfSuperiority()),
        ("Cliff", (b, a) => Dominance.Of(b, a).CliffsDelta()),
        ("normal superiority", (b, a) => NormalSuperiority.Independent(IndependentContrast.Of(b, a))),
    ];

    [Fact]
    public void AnotherUnitLeavesStandardizedEffectsAloneAndScalesADifference() =>
        Gen.Select(Sample, Sample, Gen.Double[0.1, 10], Gen.Double[-100, 100]).Sample(
            (before, after, scale, shift) =>
            {
                double[] Moved(double[] values) => [.. values.Select(x => (scale * x) + shift)];
                foreach (var (name, compute) in Standardized)
                    Near(compute(before, after), compute(Moved(before), Moved(after)), 1, name);
                Near(
                    MeanDifference.Welch(IndependentContrast.Of(before, after)),
                    MeanDifference.Welch(IndependentContrast.Of(Moved(before), Moved(after))),
                    scale,
                    "Welch");
            },
            iter: 100);

    [Fact]
    public void ShufflingSwingsChangesNothing() => Gen.Select(Sample, Sample).Sample(
        (before, after) =>
        {
            foreach (var (name, compute) in Standardized)
                Near(compute(before, after), compute([.. before.Order().Reverse()], [.. after.Order()]), 1, name);
        },
        iter: 100);

    [Fact]
    public void SwappingConditionsFlipsTheSign() => Gen.Select(Sample, Sample).Sample(
        (before, after) =>
        {
            var (there, back) = (IndependentContrast.Of(before, after), IndependentContrast.Of(after, before));
            Assert.Equal(MeanDifference.Welch(there).Value!.Value, -MeanDifference.Welch(back).Value!.Value, 1e-12);
            Assert.Equal(HedgesG.Pooled(there).Value!.Value, -HedgesG.Pooled(back).Value!.Value, 1e-10);
            Assert.Equal(HedgesG.Pooled(there).Interval!.Value.Low, -HedgesG.Pooled(back).Interval!.Value.High, 1e-6);
            Assert.Equal(LogResponseRatio.Independent(there).Value!.Value, -LogResponseRatio.Independent(back).Value!.Value, 1e-12);
            Assert.Equal(Dominance.Of(before, after).CliffsDelta().Value!.Value, -Dominance.Of(after, before).CliffsDelta().Value!.Value, 1e-12);
        },
        iter: 100);

    [Fact]
    public void EveryIntervalHoldsItsEstimate() => Gen.Select(Sample, Sample).Sample(
        (before, after) =>
        {
            var n = Math.Min(before.Length, after.Length);
            var (contrast, paired) = (IndependentContrast.Of(before, after), PairedContrast.Of(before.AsSpan(0, n), after.AsSpan(0, n)));
            Estimate[] estimates =
            [
                .. Standardized.Select(s => s.Compute(before, after)),
                MeanDifference.Pooled(contrast),
                MeanDifference.Welch(contrast),
                MeanDifference.Paired(paired),
                PercentChange.Independent(contrast),
                PercentChange.Paired(paired),
                LogResponseRatio.IndependentCorrected(contrast),
                StandardizedChange.ByDifferences(paired),
                StandardizedChange.ByAverage(paired),
                StandardizedChange.ByRepeatedMeasures(paired),
            ];
            foreach (var estimate in estimates)
                Assert.True(estimate.Interval is not { } interval || interval.Contains(estimate.Value!.Value), estimate.ToString());
        },
        iter: 100);

    [Fact]
    public void RankEffectsSeeOrderOnly() => Gen.Select(Sample, Sample).Sample((before, after) =>
    {
        double[] Stretched(double[] values) => [.. values.Select(x => x * x * x)];
        Assert.Equal(Dominance.Of(before, after), Dominance.Of(Stretched(before), Stretched(after)));
    });

    [Fact]
    public void WithEqualScatterFourDenominatorsAreOne()
    {
        // The same values moved by 2 and shuffled: both standard deviations are equal, and the changes vary.
        var paired = PairedContrast.Of([1, 4, 2, 8, 5, 7], [6, 3, 10, 4, 9, 7]);
        var expected = StandardizedChange.ByBaseline(paired).Value!.Value;
        Assert.Equal(expected, StandardizedChange.ByAverage(paired).Value!.Value, 12);
        Assert.Equal(expected, StandardizedChange.ByAverageVariance(paired).Value!.Value, 12);
        Assert.Equal(expected, StandardizedChange.ByRepeatedMeasures(paired).Value!.Value, 12);
    }

    /// <summary>Student's sleep data (1908), as in R's t.test(extra ~ group): t = −1.8608, df = 17.776, p = 0.07939, 95 % interval −3.3655 to 0.2055.</summary>
    [Fact]
    public void WelchsTestMatchesThePublishedExample()
    {
        double[] first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0], second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
        var difference = MeanDifference.Welch(IndependentContrast.Of(second, first));
        Assert.Equal(-1.8608134674868531, difference.Value!.Value / difference.StandardError!.Value, 12);
        Assert.Equal(17.7764735161784984, difference.DegreesOfFreedom!.Value, 10);
        Assert.Equal(0.0793941401873582, difference.P!.Value, 12);
        Assert.Equal(-3.3654832307117104, difference.Interval!.Value.Low, 10);
        Assert.Equal(0.2054832307117102, difference.Interval.Value.High, 10);
    }

    [Fact]
    public void WithoutScatterThereIsNoStandardizedEffectButStillADifference()
    {
        var contrast = IndependentContrast.Of([2, 2, 2], [3, 3, 3]);
        Assert.Equal("the values never vary within a condition", HedgesG.Pooled(contrast).Undefined);
        Assert.Equal(1, MeanDifference.Welch(contrast).Value);
        Assert.Null(MeanDifference.Welch(contrast).P);
    }

    [Fact]
    public void ARatioOfMeansThatAreNotPositiveIsUndefined() =>
        Assert.False(LogResponseRatio.Independent(IndependentContrast.Of([-1, 0.5], [2, 3])).IsDefined);

    private static void Near(Estimate expected, Estimate actual, double scale, string what)
    {
        Assert.True(expected.IsDefined == actual.IsDefined, what);
        if (!expected.IsDefined)
            return;
        Assert.True(Math.Abs((scale * expected.Value!.Value) - actual.Value!.Value) <= 1e-8 * (1 + Math.Abs(actual.Value.Value)), $"{what}: {expected} {actual}");
        if (expected.Interval is not { } interval)
            return;
        var (low, high) = (scale * interval.Low, scale * interval.High);
        Assert.True(Math.Abs(low - actual.Interval!.Value.Low) <= 1e-6 * (1 + Math.Abs(low)), $"{what}: {expected} {actual}");
        Assert.True(Math.Abs(high - actual.Interval.Value.High) <= 1e-6 * (1 + Math.Abs(high)), $"{what}: {expected} {actual}");
    }
}
