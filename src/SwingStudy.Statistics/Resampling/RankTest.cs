namespace SwingStudy.Statistics.Resampling;

/// <summary>A rank test with its exact null distribution given the ties, and the normal approximation beside it.</summary>
public sealed record RankTest
{
    /// <summary>The method word.</summary>
    public required string Method { get; init; }

    /// <summary>The statistic: V, the sum of ranks of positive differences, or U of the first group. Null when undefined.</summary>
    public double? Statistic { get; init; }

    /// <summary>Rank sum of the first group (Mann–Whitney); null otherwise.</summary>
    public double? RankSum { get; init; }

    /// <summary>Number of values or differences that were ranked and kept.</summary>
    public int Used { get; init; }

    /// <summary>Number of sign patterns or relabellings behind the exact p values.</summary>
    public double Assignments { get; init; }

    /// <summary>Exact P(at least as far from the mean as observed); null when undefined or beyond exact computation.</summary>
    public double? PTwoSided { get; init; }

    /// <summary>Exact P(statistic ≥ observed); null when undefined or beyond exact computation.</summary>
    public double? PGreater { get; init; }

    /// <summary>Exact P(statistic ≤ observed); null when undefined or beyond exact computation.</summary>
    public double? PLess { get; init; }

    /// <summary>Variance of the statistic without difference, corrected for ties; null when undefined.</summary>
    public double? Variance { get; init; }

    /// <summary>Standardized statistic without continuity correction; null when the variance is zero.</summary>
    public double? ZWithoutContinuity { get; init; }

    /// <summary>Standardized statistic with continuity correction ½; null when the variance is zero.</summary>
    public double? ZWithContinuity { get; init; }

    /// <summary>Two-sided p of <see cref="ZWithoutContinuity"/>; null when the variance is zero.</summary>
    public double? PNormal { get; init; }

    /// <summary>Why there is no result; null when there is one.</summary>
    public string? Undefined { get; init; }
}
