using CsCheck;
using SwingStudy.Statistics.Resampling;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.Resampling;

public class RankTests
{
    [Fact]
    public void TheExactSignedRankTestIsTheSignFlipTestOfRanks() => Some.Values(2, 10).Select(v => Some.Plus(v, -2.5)).Sample(differences =>
    {
        var nonZero = differences.Where(d => d != 0).ToArray();
        if (nonZero.Length == 0)
            return;
        var sizes = nonZero.Select(Math.Abs).ToArray();
        double[] signedRanks = [.. nonZero.Select(d => Math.Sign(d) * sizes.Average(other => other < Math.Abs(d) ? 1.0 : other == Math.Abs(d) ? 0.5 : 0))];
        var flips = SignFlip.Exact(signedRanks.Select(r => r + (Math.Sign(r) * 0.5 / signedRanks.Length)).ToArray());
        var ranks = WilcoxonSignedRank.OfDifferences(differences);
        Near.Equal(flips.PTwoSided, ranks.PTwoSided);
        Near.Equal(flips.PGreater, ranks.PGreater);
    }, iter: 60);

    [Fact]
    public void TheExactRankSumTestIsThePermutationTestOfRanks() => Gen.Select(Some.Values(1, 8), Some.Values(1, 8)).Sample(groups =>
    {
        var (first, second) = groups;
        double[] pool = [.. first, .. second];
        double Rank(double value) => pool.Count(other => other < value) + ((pool.Count(other => other == value) + 1) / 2.0);
        var permutation = TwoSampleMeanPermutation.Exact([.. first.Select(Rank)], [.. second.Select(Rank)]);
        var ranks = MannWhitney.Of(first, second);
        Near.Equal(permutation.PTwoSided, ranks.PTwoSided);
        Near.Equal(permutation.PGreater, ranks.PGreater);
        Near.Equal(permutation.PLess, ranks.PLess);
    }, iter: 60);

    [Fact]
    public void LargeSamplesMeetTheNormalApproximation()
    {
        double[] first = [.. Enumerable.Range(0, 60).Select(i => Math.Sin(i * 1.3))], second = [.. Enumerable.Range(0, 60).Select(i => Math.Sin(i * 2.1) + 0.25)];
        var sums = MannWhitney.Of(first, second);
        Near.Equal(sums.PNormal, sums.PTwoSided, 0.01);
        var signs = WilcoxonSignedRank.Of(first, second);
        Near.Equal(signs.PNormal, signs.PTwoSided, 0.01);
    }

    [Fact]
    public void EqualDifferencesOfDecimalNumbersTieAlthoughBinaryNumbersDiffer()
    {
        // 0.3 − 0.1 and 0.9 − 0.7 differ in binary arithmetic; as measurements both rose by 0.2.
        Assert.NotEqual(0.3 - 0.1, 0.9 - 0.7);
        var test = WilcoxonSignedRank.Of([0.1, 0.7, 0.5], [0.3, 0.9, 0.4]);
        Assert.Equal(5, test.Statistic);
    }

    [Fact]
    public void ZerosAreDroppedBeforeOrAfterRanking()
    {
        var dropped = WilcoxonSignedRank.OfDifferences([0, 0, 1, 2, -3]);
        var ranked = WilcoxonSignedRank.OfDifferences([0, 0, 1, 2, -3], ZeroDifferences.RankedThenDropped);
        Assert.Equal(3, dropped.Statistic);
        Assert.Equal(7, ranked.Statistic);
    }

    [Fact]
    public void DegenerateDataAreUndefinedCertainOrRefused()
    {
        Assert.NotNull(WilcoxonSignedRank.Of([], []).Undefined);
        Assert.NotNull(WilcoxonSignedRank.Of([1, 2], [1, 2]).Undefined);
        Assert.NotNull(MannWhitney.Of([], [1]).Undefined);
        Assert.Equal(1, MannWhitney.Of([4, 4], [4, 4, 4]).PTwoSided);
        Assert.Null(MannWhitney.Of([4, 4], [4, 4, 4]).ZWithContinuity);
        Assert.Throws<ArgumentException>(() => WilcoxonSignedRank.Of([1], [1, 2]));
        Assert.Throws<ArgumentException>(() => MannWhitney.Of([double.NaN], [1]));
    }
}
