using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Mann–Whitney (Wilcoxon rank-sum) test, exact with ties.</summary>
/// <remarks>
/// U = R₁ − n₁(n₁ + 1)/2, R₁ the mid-rank sum of group 1: the number of pairs in which group 1 is larger, ties half. Null distribution: every choice
/// of n₁ of the mid-ranks is equally likely. Sources: Mann and Whitney (1947), Annals of Mathematical Statistics 18:50–60; conditional exact
/// distribution with ties after Streitberg and Röhmel (1986), Statistical Software Newsletter 12:10–17.
/// </remarks>
public static class MannWhitney
{
    /// <summary>Method word.</summary>
    public const string Method = "mann-whitney-exact";

    /// <summary>Largest total number of values with exact p values.</summary>
    public const int LargestExact = 120;

    /// <summary>The test of group 1 against group 2.</summary>
    /// <param name="group1">Values of one condition, all finite.</param>
    /// <param name="group2">Values of the other, same unit, all finite.</param>
    /// <returns>Undefined when a group is empty; without exact p beyond <see cref="LargestExact"/> values.</returns>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static RankTest Of(ReadOnlySpan<double> group1, ReadOnlySpan<double> group2)
    {
        Finite.Require(group1, nameof(group1));
        Finite.Require(group2, nameof(group2));
        if (group1.IsEmpty || group2.IsEmpty)
            return new RankTest { Method = Method, Undefined = $"needs at least one value in each group, got {group1.Length} and {group2.Length}" };
        double[] pool = [.. group1, .. group2];
        var (ranks, ties) = MidRanks.Doubled(pool);
        double n1 = group1.Length, n2 = group2.Length, n = n1 + n2;
        var observed = 0;
        for (var i = 0; i < group1.Length; i++)
            observed += ranks[i];
        var u = (observed / 2.0) - (n1 * (n1 + 1) / 2);
        var variance = n > 1 ? n1 * n2 / 12 * (n + 1 - (ties / (n * (n - 1)))) : 0;
        var gap = u - (n1 * n2 / 2);
        double? plain = variance > 0 ? gap / Math.Sqrt(variance) : null;
        var test = new RankTest
        {
            Method = Method,
            Statistic = u,
            RankSum = observed / 2.0,
            Used = pool.Length,
            Assignments = Choices.Binomial(pool.Length, group1.Length),
            Variance = variance,
            ZWithoutContinuity = plain,
            ZWithContinuity = variance > 0 ? (gap - (0.5 * Math.Sign(gap))) / Math.Sqrt(variance) : null,
            PNormal = plain is { } z ? 2 * Normal.UpperTail(Math.Abs(z)) : null,
        };
        if (pool.Length > LargestExact)
            return test;
        var share = SumDistribution(ranks, group1.Length);
        double greater = 0, less = 0, far = 0;

        // Mean of the doubled rank sum is n₁(N + 1).
        var centre = group1.Length * (pool.Length + 1);
        for (var s = 0; s < share.Length; s++)
        {
            greater += s >= observed ? share[s] : 0;
            less += s <= observed ? share[s] : 0;
            far += Math.Abs(s - centre) >= Math.Abs(observed - centre) ? share[s] : 0;
        }

        return test with { PGreater = Math.Min(1, greater), PLess = Math.Min(1, less), PTwoSided = Math.Min(1, far) };
    }

    // share[k][s]: probability that a random choice has taken k of the ranks so far with doubled sum s, by sampling without replacement in turn.
    private static double[] SumDistribution(int[] ranks, int choose)
    {
        var sorted = (int[])ranks.Clone();
        Array.Sort(sorted);
        var most = 0;
        for (var i = sorted.Length - choose; i < sorted.Length; i++)
            most += sorted[i];
        var share = new double[choose + 1][];
        for (var k = 0; k <= choose; k++)
            share[k] = new double[most + 1];
        share[0][0] = 1;
        for (var i = 0; i < sorted.Length; i++)
        {
            var left = sorted.Length - i;
            for (var k = Math.Min(i, choose); k >= 0; k--)
            {
                var take = Math.Max(0, choose - k) / (double)left;
                var from = share[k];
                var to = k < choose ? share[k + 1] : null;
                for (var s = most; s >= 0; s--)
                {
                    if (from[s] == 0)
                        continue;
                    if (to is not null && take > 0 && s + sorted[i] <= most)
                        to[s + sorted[i]] += from[s] * take;
                    from[s] *= 1 - take;
                }
            }
        }

        return share[choose];
    }
}
