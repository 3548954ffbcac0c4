using CsCheck;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Tests.Distributions;

public class DistributionTests
{
    private static readonly Gen<double> Probability = Gen.Double[1e-9, 1 - 1e-9];
    private static readonly Gen<double> Degrees = Gen.Double[0.3, 400];

    [Fact]
    public void QuantilesOfTUndoItsCdf() => Gen.Select(Probability, Degrees)
        .Sample((p, df) => Assert.Equal(p, StudentT.Cdf(StudentT.Quantile(p, df), df), 1e-11));

    [Fact]
    public void QuantilesOfFUndoItsCdf() => Gen.Select(Probability, Degrees, Degrees)
        .Sample((p, df1, df2) => Assert.Equal(p, FisherF.Cdf(FisherF.Quantile(p, df1, df2), df1, df2), 1e-11));

    [Fact]
    public void QuantilesOfChiSquareUndoItsCdf() => Gen.Select(Probability, Degrees)
        .Sample((p, df) => Assert.Equal(p, ChiSquare.Cdf(ChiSquare.Quantile(p, df), df), 1e-11));

    [Fact]
    public void QuantilesOfTheNormalUndoItsCdf() => Probability.Sample(p => Assert.Equal(p, Normal.Cdf(Normal.Quantile(p)), 1e-13));

    [Fact]
    public void BothTailsOfTheNoncentralTSumToOne() => Gen.Select(Gen.Double[-60, 60], Degrees, Gen.Double[-50, 50])
        .Sample((t, df, ncp) => Assert.Equal(1, NoncentralT.Cdf(t, df, ncp) + NoncentralT.UpperTail(t, df, ncp), 1e-9), iter: 300);

    [Fact]
    public void WithoutNoncentralityItIsStudentsT() => Gen.Select(Gen.Double[-20, 20], Gen.Double[1, 200])
        .Sample((t, df) => Assert.Equal(StudentT.Cdf(t, df), NoncentralT.Cdf(t, df, 0), 1e-11), iter: 300);

    [Fact]
    public void TheNoncentralitySolvedForGivesTheTailAskedFor() => Gen.Select(Gen.Double[0.001, 0.999], Gen.Double[-300, 300], Gen.Double[1, 200])
        .Sample((p, t, df) => Assert.Equal(p, NoncentralT.Cdf(t, df, NoncentralT.NcpFromCdf(p, t, df)), 1e-8), iter: 100);

    /// <summary>Computed with R 4.2.2: piecewise integrate() of Φ(t s − δ) f(s), relative tolerance 1e-13, both tails.</summary>
    [Theory]
    [InlineData(100, 20, 95, 0.583989471073915, 0.416010528926088)]
    [InlineData(1000, 8, 900, 0.593626434842625, 0.406373565157374)]
    [InlineData(60, 200, 50, 0.99933473119745, 0.00066526880257484)]
    [InlineData(250, 30, 240, 0.589049548340671, 0.410950451659329)]
    [InlineData(15, 10, 12, 0.770869106821618, 0.229130893178382)]
    [InlineData(40, 60, 38, 0.682314877129173, 0.317685122870836)]
    [InlineData(3, 12, -2, 0.999991893938448, 8.10606155267737e-06)]
    public void LargeNoncentralitiesMatchNumericalIntegrationElsewhere(double t, double df, double ncp, double lower, double upper)
    {
        Assert.Equal(lower, NoncentralT.Cdf(t, df, ncp), 1e-10);
        Assert.Equal(upper, NoncentralT.UpperTail(t, df, ncp), (1e-9 * upper) + 1e-12);
    }

    [Fact]
    public void InfiniteDegreesOfFreedomAreTheNormal()
    {
        Assert.Equal(Normal.UpperTail(1.3), StudentT.UpperTail(1.3, double.PositiveInfinity));
        Assert.Equal(Normal.Quantile(0.9), StudentT.Quantile(0.9, double.PositiveInfinity));
        Assert.Equal(Normal.Cdf(1.3 - 0.4), NoncentralT.Cdf(1.3, double.PositiveInfinity, 0.4));
        Assert.Equal(ChiSquare.Cdf(6, 3), FisherF.Cdf(2, 3, double.PositiveInfinity), 1e-14);
    }

    [Fact]
    public void TheEndsOfTheScaleAreInfinities()
    {
        Assert.Equal(double.NegativeInfinity, Normal.Quantile(0));
        Assert.Equal(double.PositiveInfinity, StudentT.Quantile(1, 4));
        Assert.Equal(0, FisherF.Quantile(0, 2, 3));
        Assert.Equal(0, StudentT.UpperTail(double.PositiveInfinity, 4));
        Assert.Equal(1, ChiSquare.Cdf(double.PositiveInfinity, 4));
    }

    [Fact]
    public void WhatIsNoProbabilityOrDegreeOfFreedomIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Normal.Quantile(1.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => Normal.Quantile(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Cdf(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Cdf(double.NaN, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => FisherF.Cdf(1, -1, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralT.Cdf(double.PositiveInfinity, 3, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralT.NcpFromCdf(1, 2, 3));
    }
}
