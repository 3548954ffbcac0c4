using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Resampling;

/// <summary>The rows of each cluster and the clusters of each stratum.</summary>
internal sealed class ClusterPlan
{
    private readonly int[][] _rows;
    private readonly int[][] _clustersOfStratum;

    public ClusterPlan(ReadOnlySpan<int> clusterOf, ReadOnlySpan<int> stratumOf)
    {
        var rows = new Dictionary<int, List<int>>();
        var strata = new Dictionary<int, int>();
        for (var i = 0; i < clusterOf.Length; i++)
        {
            if (!rows.TryGetValue(clusterOf[i], out var list))
            {
                rows[clusterOf[i]] = list = [];
                strata[clusterOf[i]] = stratumOf[i];
            }
            else if (strata[clusterOf[i]] != stratumOf[i])
            {
                throw new ArgumentException($"Cluster {clusterOf[i]} lies in two strata.", nameof(stratumOf));
            }

            list.Add(i);
        }

        _rows = [.. rows.Values.Select(list => list.ToArray())];
        _clustersOfStratum =
        [
            .. strata.Values.Select((stratum, cluster) => (stratum, cluster)).GroupBy(pair => pair.stratum)
                .Select(group => group.Select(pair => pair.cluster).ToArray()),
        ];
        AllRows = [.. Enumerable.Range(0, clusterOf.Length)];
        MostRows = _clustersOfStratum.Sum(clusters => clusters.Length * clusters.Max(cluster => _rows[cluster].Length));
    }

    public int[] AllRows { get; }

    public int Count => _rows.Length;

    /// <summary>No resample has more rows than this.</summary>
    public int MostRows { get; }

    /// <summary>Writes the rows of one resample and returns their number.</summary>
    public int Draw(Xoshiro256 stream, Span<int> into)
    {
        var filled = 0;
        foreach (var clusters in _clustersOfStratum)
        {
            for (var i = 0; i < clusters.Length; i++)
            {
                var rows = _rows[clusters[stream.NextIndex(clusters.Length)]];
                rows.CopyTo(into[filled..]);
                filled += rows.Length;
            }
        }

        return filled;
    }

    /// <summary>All rows but those of one cluster.</summary>
    public int[] Without(int cluster) => [.. AllRows.Except(_rows[cluster])];
}
