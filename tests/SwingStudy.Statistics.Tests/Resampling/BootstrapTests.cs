using CsCheck;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.EffectSizes;
using SwingStudy.Statistics.Resampling;
using SwingStudy.Statistics.Results;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.Resampling;

public class BootstrapTests
{
    private static readonly double[] Skewed = [2.6, 9.4, 11.5, 4.5, 7.3, 0.3, 4.5, 0.2, 1.9, 6.4, 8.2, 18.6];

    [Fact]
    public void ThreadsDoNotChangeAnything()
    {
        foreach (RowStatistic statistic in new RowStatistic[] { new MeanStatistic(Skewed), new MedianStatistic(Skewed), new MeanStatistic(Skewed, standardized: true) })
        {
            var one = Bootstrap.Rows(statistic, new Xoshiro256(3), 5000, threads: 1)!;
            var two = Bootstrap.Rows(statistic, new Xoshiro256(3), 5000, threads: 2)!;
            Assert.Equal(one.Distribution.Replicates, two.Distribution.Replicates);
        }

        Assert.Equal(
            HedgesGBootstrap.Bca(Skewed, Some.Plus(Skewed, 2), new Xoshiro256(3), 5000, threads: 1),
            HedgesGBootstrap.Bca(Skewed, Some.Plus(Skewed, 2), new Xoshiro256(3), 5000, threads: 2));
        Assert.Equal(StudentizedMean.Of(Skewed, new Xoshiro256(3), 5000, threads: 1), StudentizedMean.Of(Skewed, new Xoshiro256(3), 5000, threads: 2));
    }

    [Fact]
    public void TheStandardErrorOfAMeanMeetsItsClosedForm()
    {
        // Variance of a resampled mean: squared deviations with divisor n, over n.
        var n = Skewed.Length;
        var mean = Skewed.Average();
        var expected = Math.Sqrt(Skewed.Sum(x => (x - mean) * (x - mean)) / n / n);
        var boot = Bootstrap.Rows(new MeanStatistic(Skewed), new Xoshiro256(3), 40_000)!.Distribution;
        Assert.InRange(boot.StandardError!.Value / expected, 0.98, 1.02);
        Assert.InRange(boot.Bias, -4 * expected / 200, 4 * expected / 200);
    }

    [Fact]
    public void IntervalsOfAMeanMoveWithOffsetAndUnit()
    {
        var plain = Bootstrap.Rows(new MeanStatistic(Skewed), new Xoshiro256(3), 2000)!;
        var moved = Bootstrap.Rows(new MeanStatistic(Some.Plus(Some.Times(Skewed, 4), 1e9)), new Xoshiro256(3), 2000)!;
        foreach (var (a, b) in new[]
        {
            (plain.Distribution.Percentile(), moved.Distribution.Percentile()),
            (plain.Distribution.Basic(), moved.Distribution.Basic()),
            (plain.Distribution.Bca(plain.Jackknife!.Acceleration)!.Value, moved.Distribution.Bca(moved.Jackknife!.Acceleration)!.Value),
        })
        {
            Assert.InRange(b.Low - 1e9 - (4 * a.Low), -1e-5, 1e-5);
            Assert.InRange(b.High - 1e9 - (4 * a.High), -1e-5, 1e-5);
        }
    }

    [Fact]
    public void HedgesGAgreesWithItsOwnStatisticAndWithAPlainBootstrap()
    {
        double[] before = [10, 12, 11, 14, 9, 13, 12, 11, 10, 15], after = [12, 15, 13, 16, 12, 14, 17, 13, 12, 14];
        var fast = HedgesGBootstrap.Bca(before, after, new Xoshiro256(1), 40_000);
        Near.Equal(HedgesG.Pooled(IndependentContrast.Of(before, after)).Value, fast.Value);

        // The same interval computed slowly: g of the contrast of drawn samples, acceleration as documented, quantiles by sorting.
        var chance = new Xoshiro256(77);
        var correction = HedgesCorrection.Exact(before.Length + after.Length - 2);
        double Squares(double[] a) => a.Sum(x => (x - a.Average()) * (x - a.Average()));
        double D(double[] a, double[] b) => (b.Average() - a.Average()) / Math.Sqrt((Squares(a) + Squares(b)) / (a.Length + b.Length - 2));
        double G(double[] a, double[] b) => correction * D(a, b);
        double[] Drawn(double[] from) => [.. from.Select(_ => from[chance.NextIndex(from.Length)])];
        var slow = BootstrapDistribution.Of(G(before, after), [.. Enumerable.Range(0, 10_000).Select(_ => G(Drawn(before), Drawn(after)))]);
        var percentile = slow.Percentile();
        Assert.InRange(fast.Interval!.Value.Low, percentile.Low - 0.45, percentile.High);
        Assert.InRange(fast.Interval!.Value.High, percentile.Low, percentile.High + 0.1);

        double[] leftX = [.. before.Select((_, i) => D([.. before.Where((_, j) => j != i)], after))];
        double[] leftY = [.. after.Select((_, i) => D(before, [.. after.Where((_, j) => j != i)]))];
        double[] u = [.. leftX.Select(v => (before.Length - 1.0) * (leftX.Average() - v) / before.Length), .. leftY.Select(v => (after.Length - 1.0) * (leftY.Average() - v) / after.Length)];
        var acceleration = u.Sum(v => v * v * v) / (6 * Math.Pow(u.Sum(v => v * v), 1.5));
        var bca = slow.Bca(acceleration, tiesHalf: true)!.Value;
        Near.Equal(bca.Low, fast.Interval!.Value.Low, 0.06);
        Near.Equal(bca.High, fast.Interval!.Value.High, 0.06);
    }

    [Fact]
    public void HedgesGIsUnchangedByUnitAndOffset()
    {
        double[] before = [10, 12, 11, 14, 9], after = [12, 15, 13, 16, 12];
        var plain = HedgesGBootstrap.Bca(before, after, new Xoshiro256(1), 2000);
        var moved = HedgesGBootstrap.Bca(Some.Plus(Some.Times(before, 1024), 1e9), Some.Plus(Some.Times(after, 1024), 1e9), new Xoshiro256(1), 2000);
        Near.Equal(plain.Value, moved.Value);
        Near.Equal(plain.Interval!.Value.Low, moved.Interval!.Value.Low, 1e-6);
        Near.Equal(plain.Interval!.Value.High, moved.Interval!.Value.High, 1e-6);
    }

    [Fact]
    public void SessionsThatDifferWidenTheIntervalWhenSessionsAreDrawn()
    {
        // Ten swings of each of four sessions a phase; sessions differ far more than swings.
        double[] session = [0, 3, 6, 9, 2, 5, 8, 11];
        double[] values = [.. Enumerable.Range(0, 80).Select(i => session[i / 10] + (0.1 * (i % 10)))];
        int[] clusters = [.. Enumerable.Range(0, 80).Select(i => i / 10)], strata = [.. clusters.Select(c => c / 4)];
        var statistic = new PhaseDifferenceStatistic(values, [.. strata.Select(s => s == 1)]);
        var drawn = Bootstrap.Clusters(statistic, clusters, strata, new Xoshiro256(2), 4000)!;
        var rows = Bootstrap.Clusters(statistic, [.. Enumerable.Range(0, 80)], strata, new Xoshiro256(2), 4000)!;
        Near.Equal(2, drawn.Distribution.Observed);
        Assert.True(drawn.Distribution.StandardError > 2.5 * rows.Distribution.StandardError);

        // Variance of a mean of four drawn sessions, twice.
        Assert.InRange(drawn.Distribution.StandardError!.Value, 0.97 * Math.Sqrt(2 * 11.25 / 4), 1.03 * Math.Sqrt(2 * 11.25 / 4));
        Assert.Throws<ArgumentException>(() => Bootstrap.Clusters(statistic, clusters, [.. Enumerable.Range(0, 80).Select(i => i % 2)], new Xoshiro256(2)));
    }

    [Fact]
    public void TheStudentizedIntervalCoversASkewedMeanBetterThanThePercentileInterval()
    {
        // Exponential values, mean 1, n = 10: known to undercover; Hall (1988) ranks studentized before percentile.
        var chance = new Xoshiro256(12);
        int studentized = 0, percentile = 0;
        for (var i = 0; i < 300; i++)
        {
            double[] sample = [.. Enumerable.Range(0, 10).Select(_ => -Math.Log(1 - chance.NextUnit()))];
            studentized += StudentizedMean.Of(sample, chance.Split($"t{i}"), 500).Interval!.Value.Contains(1) ? 1 : 0;
            percentile += Bootstrap.Rows(new MeanStatistic(sample), chance.Split($"p{i}"), 500)!.Distribution.Percentile().Contains(1) ? 1 : 0;
        }

        Assert.InRange(studentized / 300.0, 0.90, 0.99);
        Assert.True(studentized > percentile + 10);
    }

    [Fact]
    public void SelectedQuantilesAreThoseOfSortedValues() => Gen.Select(Some.Values(1, 40), Gen.Double[0.001, 0.999]).Sample(drawn =>
    {
        var (values, p) = drawn;
        foreach (var rule in Enum.GetValues<QuantileRule>())
        {
            var sorted = values.Order().ToArray();
            Near.Equal(SortedQuantile.At(sorted, p, rule), SortedQuantile.AtUnsorted((double[])values.Clone(), p, rule), 1e-12);
        }
    });

    [Fact]
    public void DegenerateDataAreUndefinedOrRefused()
    {
        Assert.Null(Bootstrap.Rows(new MeanStatistic([]), new Xoshiro256(1)));
        Assert.Null(Bootstrap.Rows(new MeanStatistic([2, 2, 2], standardized: true), new Xoshiro256(1)));
        var constant = Bootstrap.Rows(new MeanStatistic([2, 2, 2]), new Xoshiro256(1), 50)!;
        Assert.Equal(new Interval(2, 2, 0.95), constant.Distribution.Percentile());
        Assert.Null(constant.Distribution.Bca(0));
        Assert.Equal(0, constant.Jackknife!.Acceleration);
        Assert.False(HedgesGBootstrap.Bca([1, 2], [1, 2, 3], new Xoshiro256(1)).IsDefined);
        Assert.False(HedgesGBootstrap.Bca([1, 1, 1], [2, 2, 2], new Xoshiro256(1)).IsDefined);
        Assert.Null(StudentizedMean.Of([3, 3, 3], new Xoshiro256(1)).Interval);
        Assert.False(StudentizedMean.Of([], new Xoshiro256(1)).IsDefined);
        Assert.Throws<ArgumentException>(() => StudentizedMean.Of([1, double.NaN], new Xoshiro256(1)));
        Assert.Throws<ArgumentException>(() => BootstrapDistribution.Of(1, []));
        Assert.Throws<ArgumentException>(() => BootstrapDistribution.Of(1, [double.NaN]));
        Assert.Throws<ArgumentException>(() => Jackknife.Of([1]));
    }
}
