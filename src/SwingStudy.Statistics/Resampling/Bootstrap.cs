using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Draws rows, or whole clusters of rows, with replacement and computes a statistic each time.</summary>
/// <remarks>
/// Swings of one session resemble each other: resampling single swings then understates the error, and sessions must be drawn instead.
/// Sources: Efron (1979), Annals of Statistics 7:1–26; clusters: Field and Welsh (2007), Journal of the Royal Statistical Society B 69:369–390.
/// </remarks>
public static class Bootstrap
{
    /// <summary>Resamples single rows.</summary>
    /// <param name="statistic">The statistic and its table.</param>
    /// <param name="chance">The stream of the resamples; it is split, not drawn from.</param>
    /// <param name="resamples">Number of resamples R, at least 1.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <returns>The distribution and how many resamples did not support the statistic; null when the data themselves do not.</returns>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static BootstrapRun? Rows(RowStatistic statistic, Xoshiro256 chance, int resamples = 9999, int threads = 1)
    {
        var n = statistic.Rows;
        var clusters = new int[n];
        for (var i = 0; i < n; i++)
            clusters[i] = i;
        return Clusters(statistic, clusters, new int[n], chance, resamples, threads);
    }

    /// <summary>Resamples whole clusters within strata: sessions within their phase.</summary>
    /// <param name="statistic">The statistic and its table.</param>
    /// <param name="clusterOf">Cluster of each row.</param>
    /// <param name="stratumOf">Stratum of each row; a stratum keeps its number of clusters in every resample.</param>
    /// <param name="chance">The stream of the resamples; it is split, not drawn from.</param>
    /// <param name="resamples">Number of resamples R, at least 1.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <returns>The distribution and how many resamples did not support the statistic; null when the data themselves do not.</returns>
    /// <exception cref="ArgumentException">Lengths differ, a cluster lies in two strata, or a number is out of range.</exception>
    public static BootstrapRun? Clusters(
        RowStatistic statistic, ReadOnlySpan<int> clusterOf, ReadOnlySpan<int> stratumOf, Xoshiro256 chance, int resamples = 9999, int threads = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(resamples, 1);
        if (clusterOf.Length != statistic.Rows || stratumOf.Length != statistic.Rows)
            throw new ArgumentException($"Each of the {statistic.Rows} rows needs its cluster and its stratum.", nameof(clusterOf));
        var plan = new ClusterPlan(clusterOf, stratumOf);
        var observed = statistic.Of(plan.AllRows);
        if (!double.IsFinite(observed))
            return null;
        var values = new double[resamples];
        ResampleBlocks.Run(resamples, threads, chance, (start, end, stream) =>
        {
            var own = statistic.Copy();
            var rows = new int[plan.MostRows];
            for (var i = start; i < end; i++)
                values[i] = own.Of(rows.AsSpan(0, plan.Draw(stream, rows)));
        });
        var finite = Array.FindAll(values, double.IsFinite);
        if (finite.Length == 0)
            return null;
        var leftOut = new List<double>();
        for (var cluster = 0; cluster < plan.Count; cluster++)
        {
            var value = statistic.Of(plan.Without(cluster));
            if (double.IsFinite(value))
                leftOut.Add(value);
        }

        return new BootstrapRun(
            BootstrapDistribution.Of(observed, finite),
            resamples - finite.Length,
            leftOut.Count >= 2 && leftOut.Count == plan.Count ? Jackknife.Of(leftOut.ToArray()) : null);
    }

    /// <summary>The statistic of resamples whose rows are given.</summary>
    /// <param name="statistic">The statistic and its table.</param>
    /// <param name="resamples">0-based rows of each resample.</param>
    /// <returns>The distribution; null when the data or none of the resamples support the statistic.</returns>
    public static BootstrapRun? Given(RowStatistic statistic, IReadOnlyList<int[]> resamples)
    {
        var all = Enumerable.Range(0, statistic.Rows).ToArray();
        var observed = statistic.Of(all);
        var values = resamples.Select(rows => statistic.Of(rows)).Where(double.IsFinite).ToArray();
        if (!double.IsFinite(observed) || values.Length == 0)
            return null;
        var leftOut = all.Select(row => statistic.Of([.. all.Where(other => other != row)])).ToArray();
        return new BootstrapRun(
            BootstrapDistribution.Of(observed, values),
            resamples.Count - values.Length,
            leftOut.Length >= 2 && leftOut.All(double.IsFinite) ? Jackknife.Of(leftOut) : null);
    }
}
