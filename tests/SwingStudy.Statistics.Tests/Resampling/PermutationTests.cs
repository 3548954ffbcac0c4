using CsCheck;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Resampling;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.Resampling;

public class PermutationTests
{
    [Fact]
    public void TheSplitEnumerationAgreesWithVisitingEveryRelabelling() => Gen.Select(Some.Values(1, 6), Some.Values(1, 6)).Sample(groups =>
    {
        var (first, second) = groups;
        double[] pool = [.. first, .. second];
        var observed = first.Average() - second.Average();
        int greater = 0, less = 0, far = 0, all = 0;
        for (var set = 0; set < 1 << pool.Length; set++)
        {
            if (int.PopCount(set) != first.Length)
                continue;
            var chosen = pool.Where((_, i) => ((set >> i) & 1) == 1).Average();
            var rest = pool.Where((_, i) => ((set >> i) & 1) == 0).Average();
            all++;
            greater += chosen - rest >= observed - 1e-9 ? 1 : 0;
            less += chosen - rest <= observed + 1e-9 ? 1 : 0;
            far += Math.Abs(chosen - rest) >= Math.Abs(observed) - 1e-9 ? 1 : 0;
        }

        var test = TwoSampleMeanPermutation.Exact(first, second);
        Assert.Equal((all, greater, less, far), ((int)test.Assignments, (int)test.CountGreater, (int)test.CountLess, (int)test.CountTwoSided));
    }, iter: 60);

    [Fact]
    public void TheSplitFlipsAgreeWithVisitingEverySignPattern() => Some.Values(1, 10).Select(v => Some.Plus(v, -2.5)).Sample(differences =>
    {
        var observed = differences.Sum();
        int greater = 0, far = 0;
        for (var set = 0; set < 1 << differences.Length; set++)
        {
            var sum = differences.Select((d, i) => ((set >> i) & 1) == 1 ? d : -d).Sum();
            greater += sum >= observed - 1e-9 ? 1 : 0;
            far += Math.Abs(sum) >= Math.Abs(observed) - 1e-9 ? 1 : 0;
        }

        var test = SignFlip.Exact(differences);
        Assert.Equal((greater, far), ((int)test.CountGreater, (int)test.CountTwoSided));
    }, iter: 60);

    [Fact]
    public void MonteCarloMeetsTheExactValueWithinItsError()
    {
        var normal = new NormalStream(new Xoshiro256(8));
        double[] first = [.. Enumerable.Range(0, 14).Select(_ => normal.Next())], second = [.. Enumerable.Range(0, 9).Select(_ => normal.Next() + 0.7)];
        var exact = TwoSampleMeanPermutation.Exact(first, second);
        var drawn = TwoSampleMeanPermutation.MonteCarlo(first, second, new Xoshiro256(1), 40_000);
        Assert.InRange(Math.Abs(exact.PTwoSided!.Value - drawn.PTwoSided!.Value), 0, 4 * drawn.MonteCarloError!.Value);
        double[] differences = [.. first.Select(x => x + 0.4)];
        var flips = SignFlip.Exact(differences);
        var drawnFlips = SignFlip.MonteCarlo(differences, new Xoshiro256(2), 40_000);
        Assert.InRange(Math.Abs(flips.PGreater!.Value - drawnFlips.PGreater!.Value), 0, 4 * Math.Sqrt(0.25 / 40_000));
        Assert.Null(exact.MonteCarloError);
    }

    [Fact]
    public void UnitOffsetAndOrderChangeNoCount() => Gen.Select(Some.Values(2, 9), Some.Values(2, 9)).Sample(groups =>
    {
        var (first, second) = groups;
        var plain = TwoSampleMeanPermutation.Exact(first, second);
        foreach (var (a, b) in new[]
        {
            (Some.Backwards(first), Some.Backwards(second)),
            (Some.Times(first, 1e-5), Some.Times(second, 1e-5)),
            (Some.Plus(Some.Times(first, 10), 1e9), Some.Plus(Some.Times(second, 10), 1e9)),
        })
        {
            var moved = TwoSampleMeanPermutation.Exact(a, b);
            Assert.Equal((plain.CountGreater, plain.CountLess, plain.CountTwoSided), (moved.CountGreater, moved.CountLess, moved.CountTwoSided));
        }
    }, iter: 60);

    [Fact]
    public void SwappingTheGroupsTurnsTheStatisticAndSwapsTheSides() => Gen.Select(Some.Values(2, 9), Some.Values(2, 9)).Sample(groups =>
    {
        var forth = TwoSampleMeanPermutation.Exact(groups.Item1, groups.Item2);
        var back = TwoSampleMeanPermutation.Exact(groups.Item2, groups.Item1);
        Near.Equal(-forth.Observed, back.Observed);
        Assert.Equal((forth.CountGreater, forth.CountTwoSided), (back.CountLess, back.CountTwoSided));
    }, iter: 60);

    [Fact]
    public void ThreadsDoNotChangeAnything()
    {
        var normal = new NormalStream(new Xoshiro256(8));
        double[] first = [.. Enumerable.Range(0, 30).Select(_ => normal.Next())], second = [.. Enumerable.Range(0, 25).Select(_ => normal.Next())];
        Assert.Equal(
            TwoSampleMeanPermutation.MonteCarlo(first, second, new Xoshiro256(1), 5000, threads: 1),
            TwoSampleMeanPermutation.MonteCarlo(first, second, new Xoshiro256(1), 5000, threads: 2));
        Assert.Equal(SignFlip.MonteCarlo(first, new Xoshiro256(1), 5000, threads: 1), SignFlip.MonteCarlo(first, new Xoshiro256(1), 5000, threads: 2));
    }

    [Fact]
    public void TheLargestExactTestCountsEveryRelabelling()
    {
        double[] values = [.. Enumerable.Range(1, 36).Select(i => (double)i)];
        var test = TwoSampleMeanPermutation.Exact(values.AsSpan(0, 18), values.AsSpan(18));
        Assert.Equal(9_075_135_300, test.Assignments);
        Assert.Equal(2, test.CountTwoSided);
        Assert.Equal(1L << 36, SignFlip.Exact(values).Compared);
        Assert.Equal(2, SignFlip.Exact(values).CountTwoSided);
    }

    [Fact]
    public void DegenerateDataAreUndefinedCertainOrRefused()
    {
        Assert.NotNull(TwoSampleMeanPermutation.Exact([], [1]).Undefined);
        Assert.NotNull(SignFlip.Exact([]).Undefined);
        Assert.Equal(1, TwoSampleMeanPermutation.Exact([5, 5], [5, 5, 5]).PTwoSided);
        Assert.Equal(1, SignFlip.Exact([0, 0, 0]).PTwoSided);
        Assert.Equal(1, TwoSampleMeanPermutation.Exact([1], [2]).PTwoSided);
        Assert.Throws<ArgumentException>(() => TwoSampleMeanPermutation.Exact([1, double.NaN], [2]));
        Assert.Throws<ArgumentException>(() => SignFlip.Exact([double.PositiveInfinity]));
        Assert.Throws<ArgumentException>(() => TwoSampleMeanPermutation.Exact(new double[20], new double[20]));
    }
}
