using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Wilcoxon signed-rank test, exact with ties.</summary>
/// <remarks>
/// V = sum of the mid-ranks of |d| over d &gt; 0. Null distribution: every sign pattern of the ranks kept is equally likely. Mean Σr/2, variance Σr²/4.
/// Sources: Wilcoxon (1945), Biometrics Bulletin 1:80–83; Pratt (1959), JASA 54:655–667.
/// </remarks>
public static class WilcoxonSignedRank
{
    /// <summary>Method word with zeros dropped before ranking.</summary>
    public const string Method = "wilcoxon-signed-rank-exact";

    /// <summary>Method word with zeros ranked, then dropped.</summary>
    public const string PrattMethod = "wilcoxon-signed-rank-pratt-exact";

    /// <summary>Largest number of differences with exact p values.</summary>
    public const int LargestExact = 500;

    /// <summary>The test of post minus pre.</summary>
    /// <remarks>
    /// Differences are rounded to the 14th significant decimal of the largest value, so that equal differences of decimal numbers tie.
    /// </remarks>
    /// <param name="pre">First value of each pair, all finite.</param>
    /// <param name="post">Second value of each pair, same unit, all finite.</param>
    /// <param name="zeros">What happens to differences of zero.</param>
    /// <returns>Undefined without a difference other than zero; without exact p beyond <see cref="LargestExact"/> differences.</returns>
    /// <exception cref="ArgumentException">Lengths differ or a value is not finite.</exception>
    public static RankTest Of(
        ReadOnlySpan<double> pre, ReadOnlySpan<double> post, ZeroDifferences zeros = ZeroDifferences.DroppedBeforeRanking)
    {
        if (pre.Length != post.Length)
            throw new ArgumentException($"Pairs need both values: {pre.Length} first, {post.Length} second.", nameof(post));
        Finite.Require(pre, nameof(pre));
        Finite.Require(post, nameof(post));
        var differences = new double[pre.Length];
        var largest = 0.0;
        for (var i = 0; i < differences.Length; i++)
        {
            differences[i] = post[i] - pre[i];
            largest = Math.Max(largest, Math.Max(Math.Abs(pre[i]), Math.Abs(post[i])));
        }

        DecimalGrid.Snap(differences, largest, digits: 14);
        return OfDifferences(differences, zeros);
    }

    /// <summary>The test of differences as they are.</summary>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    /// <inheritdoc cref="Of" path="/param|/returns"/>
    /// <param name="differences">Second minus first value of each pair, all finite.</param>
    /// <param name="zeros">What happens to differences of zero.</param>
    public static RankTest OfDifferences(ReadOnlySpan<double> differences, ZeroDifferences zeros = ZeroDifferences.DroppedBeforeRanking)
    {
        Finite.RequireComputed(differences, nameof(differences));
        var method = zeros == ZeroDifferences.DroppedBeforeRanking ? Method : PrattMethod;
        var sizes = new List<double>();
        var signs = new List<int>();
        foreach (var difference in differences)
        {
            if (difference == 0 && zeros == ZeroDifferences.DroppedBeforeRanking)
                continue;
            sizes.Add(Math.Abs(difference));
            signs.Add(Math.Sign(difference));
        }

        var (all, _) = MidRanks.Doubled(sizes.ToArray());
        var ranks = all.Where((_, i) => signs[i] != 0).ToArray();
        if (ranks.Length == 0)
            return new RankTest { Method = method, Undefined = "needs at least one difference other than zero" };
        long v = 0, total = 0;
        var squares = 0.0;
        for (var i = 0; i < all.Length; i++)
        {
            if (signs[i] == 0)
                continue;
            v += signs[i] > 0 ? all[i] : 0;
            total += all[i];
            squares += (double)all[i] * all[i];
        }

        // Ranks are doubled: halves for the statistic, quarters for squares.
        double statistic = v / 2.0, mean = total / 4.0, sd = Math.Sqrt(squares / 16);
        var plain = (statistic - mean) / sd;
        var test = new RankTest
        {
            Method = method,
            Statistic = statistic,
            Used = ranks.Length,
            Assignments = Math.Pow(2, ranks.Length),
            Variance = squares / 16,
            ZWithoutContinuity = plain,
            ZWithContinuity = (statistic - mean - (0.5 * Math.Sign(statistic - mean))) / sd,
            PNormal = 2 * Normal.UpperTail(Math.Abs(plain)),
        };
        if (ranks.Length > LargestExact)
            return test;
        var share = SignDistribution(ranks, (int)total);
        double greater = 0, less = 0, far = 0;
        var distance = Math.Abs((2 * v) - total);
        for (var s = 0; s < share.Length; s++)
        {
            greater += s >= v ? share[s] : 0;
            less += s <= v ? share[s] : 0;
            far += Math.Abs((2L * s) - total) >= distance ? share[s] : 0;
        }

        return test with { PGreater = Math.Min(1, greater), PLess = Math.Min(1, less), PTwoSided = Math.Min(1, far) };
    }

    private static double[] SignDistribution(int[] ranks, int total)
    {
        var share = new double[total + 1];
        share[0] = 1;
        var reach = 0;
        foreach (var rank in ranks)
        {
            reach += rank;
            for (var s = reach; s >= 0; s--)
                share[s] = (share[s] + (s >= rank ? share[s - rank] : 0)) / 2;
        }

        return share;
    }
}
