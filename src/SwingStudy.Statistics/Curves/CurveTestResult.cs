namespace SwingStudy.Statistics.Curves;

/// <summary>Two sets of curves compared at every node, with one error rate over the whole curve.</summary>
public sealed record CurveTestResult
{
    /// <summary>The method word.</summary>
    public required string Method { get; init; }

    /// <summary>
    /// t at each node, positive where the first set (or the second curve of a pair) is higher. Null where no curve varies; infinite where the sets
    /// differ without any scatter.
    /// </summary>
    public IReadOnlyList<double?> T { get; init; } = [];

    /// <summary>Number of relabellings compared, the observed one included.</summary>
    public int Compared { get; init; }

    /// <summary>Number of possible relabellings.</summary>
    public double Relabellings { get; init; }

    /// <summary>Whether all relabellings were compared.</summary>
    public bool IsExact { get; init; }

    /// <summary>Largest |t| over the nodes of each relabelling, sorted.</summary>
    public IReadOnlyList<double> LargestTs { get; init; } = [];

    /// <summary>Largest |t| of the observed labelling; null when undefined.</summary>
    public double? LargestT { get; init; }

    /// <summary>|t| that the largest |t| of a curve exceeds in at most a share alpha of relabellings: the ⌈(1 − alpha)N⌉-th smallest.</summary>
    public double? Threshold { get; init; }

    /// <summary>Error rate alpha over the whole curve.</summary>
    public double Alpha { get; init; }

    /// <summary>Share of relabellings with a largest |t| at least as large as the observed one.</summary>
    public double? P { get; init; }

    /// <summary>At each node, share of relabellings with a largest |t| anywhere at least as large as |t| there; null where t is.</summary>
    public IReadOnlyList<double?> AdjustedP { get; init; } = [];

    /// <summary>Runs of nodes beyond the threshold, in order.</summary>
    public IReadOnlyList<CurveCluster> Clusters { get; init; } = [];

    /// <summary>Why there is no result; null when there is one.</summary>
    public string? Undefined { get; init; }

    /// <summary>The ⌈share·N⌉-th smallest of the largest |t|.</summary>
    /// <exception cref="ArgumentException">The share is not in (0, 1], or the result is undefined.</exception>
    public double Quantile(double share)
    {
        if (!(share > 0 && share <= 1) || LargestTs.Count == 0)
            throw new ArgumentException($"A share in (0, 1] of a defined result is needed; got {share}.", nameof(share));
        return LargestTs[Rank(share, LargestTs.Count) - 1];
    }

    /// <summary>⌈share·count⌉, whole products kept whole.</summary>
    internal static int Rank(double share, int count) => Math.Clamp((int)Math.Ceiling((share * count) - 1e-9), 1, count);
}
