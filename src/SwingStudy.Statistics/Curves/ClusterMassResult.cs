namespace SwingStudy.Statistics.Curves;

/// <summary>Runs of nodes beyond a fixed |t|, each with the p of its mass.</summary>
public sealed record ClusterMassResult
{
    /// <summary>The method word.</summary>
    public required string Method { get; init; }

    /// <summary>The |t| beyond which nodes form runs; null when undefined.</summary>
    public double? FormingT { get; init; }

    /// <summary>Number of relabellings compared, the observed one included.</summary>
    public int Compared { get; init; }

    /// <summary>Whether all relabellings were compared.</summary>
    public bool IsExact { get; init; }

    /// <summary>The runs of the observed curves, in order.</summary>
    public IReadOnlyList<MassCluster> Clusters { get; init; } = [];

    /// <summary>Why there is no result; null when there is one.</summary>
    public string? Undefined { get; init; }
}
