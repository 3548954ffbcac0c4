using CsCheck;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.SingleCase;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.SingleCase;

public class SegmentedRegressionTests
{
    private static readonly Func<double[], int, SegmentedFit>[] Methods =
    [
        (y, before) => SegmentedRegression.OrdinaryLeastSquares(y, before),
        (y, before) => SegmentedRegression.HeteroskedasticityConsistent3(y, before),
        (y, before) => SegmentedRegression.NeweyWest(y, before),
        (y, before) => SegmentedRegression.PraisWinsten(y, before),
        (y, before) => SegmentedLikelihood.MaximumLikelihood(y, before),
        (y, before) => SegmentedLikelihood.RestrictedMaximumLikelihood(y, before),
    ];

    [Fact]
    public void ALevelAndASlopeChangeAreFoundByEveryMethod()
    {
        var normal = new NormalStream(new Xoshiro256(5));
        double[] y = [.. Enumerable.Range(1, 60).Select(t => 10 + (0.1 * t) + (t > 30 ? 5 + (0.3 * (t - 31)) : 0) + (0.2 * normal.Next()))];
        foreach (var method in Methods)
        {
            var fit = method(y, 30);
            Assert.Null(fit.Undefined);
            Assert.InRange(fit.LevelChange.Value!.Value, 4.6, 5.4);
            Assert.InRange(fit.SlopeChange.Value!.Value, 0.27, 0.33);
            Assert.True(fit.LevelChange.P < 1e-6);
            Assert.True(fit.LevelChange.Interval!.Value.Contains(fit.LevelChange.Value!.Value));
        }
    }

    [Fact]
    public void AnotherUnitAndOffsetScaleEveryCoefficientAndLeavePAlone() => Some.Distinct(14, 20).Sample(y =>
    {
        var moved = Some.Plus(Some.Times(y, 8), 512);
        foreach (var method in Methods)
        {
            SegmentedFit plain = method(y, 6), other = method(moved, 6);
            Assert.Equal(plain.Undefined, other.Undefined);
            if (plain.Undefined is not null)
                continue;
            Near.Equal(8 * plain.LevelChange.Value, other.LevelChange.Value, 1e-5);
            Near.Equal((8 * plain.Intercept.Value) + 512, other.Intercept.Value, 1e-5);
            Near.Equal(8 * plain.SlopeChange.StandardError, other.SlopeChange.StandardError, 1e-5);
            Near.Equal(plain.LevelChange.P, other.LevelChange.P, 1e-5);
        }
    }, iter: 40);

    [Fact]
    public void ABillionOfOffsetCostsNoMoreDigitsThanTheValuesLost()
    {
        double[] y = [1, 3, 2, 4, 3, 9, 8, 11, 10, 12];
        var plain = SegmentedRegression.OrdinaryLeastSquares(y, 5);
        var moved = SegmentedRegression.OrdinaryLeastSquares(Some.Plus(y, 1e9), 5);
        Near.Equal(plain.LevelChange.Value, moved.LevelChange.Value, 1e-12);
        Near.Equal(plain.LevelChange.StandardError, moved.LevelChange.StandardError, 1e-12);
    }

    [Theory]
    [InlineData(new double[0], 0)]
    [InlineData(new double[] { 1 }, 1)]
    [InlineData(new double[] { 1, 2 }, 1)]
    [InlineData(new double[] { 1, 2, 3, 4 }, 2)]
    [InlineData(new double[] { 5, 5, 5, 5, 5, 5 }, 3)]
    [InlineData(new double[] { 1, 2, 3, 4, 5, 6, 7 }, 1)]
    [InlineData(new[] { 0, double.Epsilon, 0, double.Epsilon, 0, 0 }, 3)]
    public void ASeriesThatIdentifiesNothingIsUndefinedWithItsReason(double[] y, int before)
    {
        foreach (var method in Methods)
            Assert.NotNull(method(y, before).Undefined);
        Assert.NotNull(SeriesResiduals.Of(y, before).DurbinWatson.Undefined);
    }

    [Fact]
    public void PerfectLinesHaveNoErrorsToCorrelate()
    {
        double[] y = [1, 2, 3, 4, 10, 12, 14, 16];
        Near.Equal(5, SegmentedRegression.OrdinaryLeastSquares(y, 4).LevelChange.Value);
        Assert.NotNull(SegmentedRegression.PraisWinsten(y, 4).Undefined);
        Assert.NotNull(SegmentedLikelihood.MaximumLikelihood(y, 4).Undefined);
        Assert.NotNull(SeriesResiduals.Of(y, 4).DurbinWatson.Undefined);
    }

    [Fact]
    public void WrongArgumentsAreRefused()
    {
        Assert.Throws<ArgumentException>(() => SegmentedRegression.OrdinaryLeastSquares([1, 2, double.NaN, 4, 5, 6], 3));
        Assert.Throws<ArgumentException>(() => SegmentedRegression.OrdinaryLeastSquares([1, 2, 3, 4, 5, 6], 7));
        Assert.Throws<ArgumentException>(() => SegmentedRegression.NeweyWest([1, 2, 3, 4, 5, 9], 3, lag: 6));
        Assert.Throws<ArgumentException>(() => SegmentedRegression.OrdinaryLeastSquares([1, 2, 3, 4, 5, 6], 3, confidence: 1));
    }

    /// <summary>With unit weights ±1 in equal numbers the form is symmetric; with all weights of one sign it is certain; two squares have a closed form.</summary>
    [Fact]
    public void TheQuadraticFormMeetsItsClosedForms()
    {
        Near.Equal(0.5, QuadraticForm.ProbabilityBelowZero([1, 1, -1, -1]), 1e-12);
        Assert.Equal(0, QuadraticForm.ProbabilityBelowZero([1, 2, 3]));
        Assert.Equal(1, QuadraticForm.ProbabilityBelowZero([-1, -2]));

        // P(z₁² a < z₂² b) with one square each: 2/π · arctan(√(b/a)).
        Near.Equal(2 / Math.PI * Math.Atan(Math.Sqrt(3.0 / 2)), QuadraticForm.ProbabilityBelowZero([2, -3]), 1e-9);

        // Two equal squares on one side are exponential: P(2E₁·a < 2E₂·b) = b/(a + b).
        Near.Equal(3.0 / 5, QuadraticForm.ProbabilityBelowZero([2, 2, -3, -3]), 1e-12);
    }
}
