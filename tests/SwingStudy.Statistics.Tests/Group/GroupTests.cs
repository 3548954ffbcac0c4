using CsCheck;
using SwingStudy.Statistics.Group;

namespace SwingStudy.Statistics.Tests.Group;

public class GroupTests
{
    private static readonly Gen<double[]> PValues = Gen.Double[0, 1].Array[1, 20];

    [Fact]
    public void AdjustmentsOnlyRaiseAndKeepTheirRanks() => PValues.Sample(p =>
    {
        var (bonferroni, holm, hochberg) = (Multiplicity.Bonferroni(p), Multiplicity.Holm(p), Multiplicity.Hochberg(p));
        var bh = Multiplicity.BenjaminiHochberg(p);
        for (var i = 0; i < p.Length; i++)
        {
            Assert.True(p[i] <= bh[i] && bh[i] <= hochberg[i] + 1e-15 && hochberg[i] <= holm[i] + 1e-15 && holm[i] <= bonferroni[i] + 1e-15);
            for (var j = 0; j < p.Length; j++)
                Assert.True(p[i] > p[j] || (holm[i] <= holm[j] && hochberg[i] <= hochberg[j] && bh[i] <= bh[j]));
        }
    });

    [Fact]
    public void APValueOutsideItsRangeIsRefused() => Assert.Throws<ArgumentException>(() => Multiplicity.Holm([0.1, 1.2]));

    [Fact]
    public void ShiftingEffectsShiftsTheMeanAndLeavesHeterogeneityAlone() => Gen.Double[-2, 2].Array[3, 12].Sample(effects =>
    {
        var variances = effects.Select((_, i) => 0.05 + (0.02 * (i % 4))).ToArray();
        foreach (var estimator in Enum.GetValues<HeterogeneityEstimator>())
        {
            var plain = MetaAnalysis.Of(effects, variances, estimator)!;
            var moved = MetaAnalysis.Of(effects.Select(x => x + 5).ToArray(), variances, estimator)!;
            Assert.Equal(plain.TauSquared.Value!.Value, moved.TauSquared.Value!.Value, 1e-8);
            Assert.Equal(plain.RandomEffects.Value!.Value + 5, moved.RandomEffects.Value!.Value, 1e-8);
            Assert.True(plain.PredictionNormal.Low <= plain.RandomEffects.Interval!.Value.Low + 1e-12);
            Assert.InRange(plain.ISquared, 0, 1);
        }
    });

    [Fact]
    public void WithEqualVariancesAllEstimatorsButMlAreTheVarianceOfEffectsLessTheirOwn()
    {
        double[] effects = [0.1, 0.9, 0.4, 1.6], variances = [0.1, 0.1, 0.1, 0.1];
        var expected = (((0.65 * 0.65) + (0.15 * 0.15) + (0.35 * 0.35) + (0.85 * 0.85)) / 3) - 0.1;
        foreach (var estimator in new[] { HeterogeneityEstimator.DerSimonianLaird, HeterogeneityEstimator.PauleMandel, HeterogeneityEstimator.Reml })
            Assert.Equal(expected, MetaAnalysis.Of(effects, variances, estimator)!.TauSquared.Value!.Value, 9);
        Assert.Equal(((expected + 0.1) * 3 / 4) - 0.1, MetaAnalysis.Of(effects, variances, HeterogeneityEstimator.Ml)!.TauSquared.Value!.Value, 9);
    }

    [Fact]
    public void OneEffectIsNoMetaAnalysisAndAVarianceOfZeroIsRefused()
    {
        Assert.Null(MetaAnalysis.Of([0.5], [0.1]));
        Assert.Throws<ArgumentException>(() => MetaAnalysis.Of([0.5, 0.6], [0.1, 0]));
    }

    /// <summary>Computed with R 4.2.2: analysis of covariance y ~ factor(subject) + x; r = √(SS_x/(SS_x + SS_residual)) with the slope's sign.</summary>
    [Fact]
    public void TheWithinSubjectCorrelationIsThatOfTheAnalysisOfCovariance()
    {
        int[] subjects = [1, 1, 1, 2, 2, 2, 2, 3, 3, 3];
        double[] x = [1, 2, 4, 2, 3, 5, 7, 0, 1, 5], y = [10.1, 10.9, 13.2, 20.5, 20.9, 23.4, 24.1, 4.9, 6.2, 9.5];
        var r = RepeatedMeasuresCorrelation.Of(x, y, subjects);
        Assert.Equal(0.981981459014918, r.Value!.Value, 12);
        Assert.Equal(1.44281710267463e-05, r.P!.Value, 15);
        Assert.Equal(6, r.DegreesOfFreedom);
    }

    [Fact]
    public void IndividualResponsesAreTheVarianceThatTheCueAdds()
    {
        // Variances 10 with and 2.5 without the cue, by hand: √7.5; SE of the variance √(2 (100/4 + 6.25/4)) = 7.289.
        var response = IndividualResponse.Of([-2, -1, 0, 1, 2], [-4, -2, 0, 2, 4]);
        Assert.Equal(Math.Sqrt(7.5), response.Value!.Value, 12);
        Assert.Equal(Math.Sqrt(7.5 + (1.959963984540054 * Math.Sqrt(53.125))), response.Interval!.Value.High, 9);
        Assert.True(response.Interval.Value.Low < 0);
        Assert.True(IndividualResponse.Of([-4, -2, 0, 2, 4], [-2, -1, 0, 1, 2]).Value < 0);
    }
}
