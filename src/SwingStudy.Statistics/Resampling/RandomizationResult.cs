namespace SwingStudy.Statistics.Resampling;

/// <summary>A statistic compared with its values under all other admissible assignments, or a random sample of them.</summary>
public sealed record RandomizationResult
{
    /// <summary>The method word.</summary>
    public required string Method { get; init; }

    /// <summary>The statistic under the actual assignment; null when undefined.</summary>
    public double? Observed { get; init; }

    /// <summary>Number of admissible assignments, the actual one included; infinity beyond the range of numbers.</summary>
    public double Assignments { get; init; }

    /// <summary>Number of assignments compared, the actual one included: all of them when <see cref="IsExact"/>.</summary>
    public long Compared { get; init; }

    /// <summary>Whether every admissible assignment was compared.</summary>
    public bool IsExact { get; init; }

    /// <summary>Compared assignments with a statistic at least as large as the observed one, itself included.</summary>
    public long CountGreater { get; init; }

    /// <summary>Compared assignments with a statistic at most as large as the observed one, itself included.</summary>
    public long CountLess { get; init; }

    /// <summary>Compared assignments with a statistic at least as large in size as the observed one, itself included.</summary>
    public long CountTwoSided { get; init; }

    /// <summary>One-sided p that values rise; null when undefined.</summary>
    public double? PGreater => Share(CountGreater);

    /// <summary>One-sided p that values fall; null when undefined.</summary>
    public double? PLess => Share(CountLess);

    /// <summary>Two-sided p by the size of the statistic; null when undefined.</summary>
    public double? PTwoSided => Share(CountTwoSided);

    /// <summary>The smallest p any data could give: one over the assignments compared.</summary>
    public double? SmallestPossibleP => Compared > 0 ? 1.0 / Compared : null;

    /// <summary>Standard error of <see cref="PTwoSided"/> from comparing a sample of assignments; null when exact.</summary>
    public double? MonteCarloError => IsExact || PTwoSided is not { } p ? null : Math.Sqrt(p * (1 - p) / Compared);

    /// <summary>Why there is no result; null when there is one.</summary>
    public string? Undefined { get; init; }

    internal static RandomizationResult NotDefined(string method, string reason) => new() { Method = method, Undefined = reason };

    private double? Share(long count) => Compared > 0 ? (double)count / Compared : null;
}
