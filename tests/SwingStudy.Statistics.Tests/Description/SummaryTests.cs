using CsCheck;
using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Tests.Description;

public class SummaryTests
{
    private static readonly Gen<double[]> Samples = Gen.Double[-100, 100].Array[2, 40];

    [Fact]
    public void AnOffsetOfABillionCostsNoDigitsOfTheScatter() => Gen.Int[-1000, 1000].Array[2, 40].Sample(whole =>
    {
        // Quarters are exact beside a billion, so only the algorithm could lose digits.
        var plain = Summary.Of(whole.Select(x => x / 4.0).ToArray());
        var moved = Summary.Of(whole.Select(x => 1e9 + (x / 4.0)).ToArray());
        Assert.Equal(plain.SumOfSquares, moved.SumOfSquares, 1e-9 * (1 + plain.SumOfSquares));
    });

    [Fact]
    public void OrderDoesNotMatter() => Samples.Sample(values =>
    {
        var (forward, back) = (Summary.Of(values), Summary.Of(values.Reverse().ToArray()));
        Assert.Equal(forward.Mean!.Value, back.Mean!.Value, 1e-12);
        Assert.Equal(forward.StandardDeviation!.Value, back.StandardDeviation!.Value, 1e-11);
    });

    [Fact]
    public void EqualValuesHaveExactlyNoScatter() => Gen.Select(Gen.Double[-1e6, 1e6], Gen.Int[2, 50])
        .Sample((x, n) => Assert.Equal(0, Summary.Of(Enumerable.Repeat(x, n).ToArray()).SumOfSquares));

    [Fact]
    public void TooFewValuesHaveNoScatterToStateAndNoneHaveNoMean()
    {
        Assert.Null(Summary.Of([]).Mean);
        Assert.Equal(3, Summary.Of([3]).Mean);
        Assert.Null(Summary.Of([3]).StandardDeviation);
    }

    [Fact]
    public void WithinAndBetweenSumsOfSquaresAddUpToTheTotal() => Gen.Select(Samples, Gen.Int[1, 5]).Sample((values, groups) =>
    {
        var anova = OneWayAnova.Of(values, values.Select((_, i) => i % groups).ToArray())!;
        Assert.Equal(Summary.Of(values).SumOfSquares, anova.BetweenSumOfSquares + anova.WithinSumOfSquares, 1e-7);
    });

    [Fact]
    public void ALineHasCorrelationOne()
    {
        Assert.Equal(1, Correlation.Pearson([1, 2, 3], [5, 7, 9])!.Value, 14);
        Assert.Null(Correlation.Pearson([1, 2, 3], [4, 4, 4]));
    }
}
