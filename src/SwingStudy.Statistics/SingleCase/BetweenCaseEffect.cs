using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>A design-comparable standardized mean difference from several cases: the change divided by the spread between and within cases.</summary>
/// <remarks>
/// Comparable with the effect of a group design, because the divisor holds the spread between people. The members that a method does not use are null.
/// </remarks>
public sealed record BetweenCaseEffect
{
    /// <summary>
    /// The bias-corrected effect g = J(ν)·δ, J(x) = 1 − 3/(4x − 1), with its standard error and the interval by the normal distribution.
    /// Variance J²[κ²ν/(ν − 2) + δ̂²(ν/(ν − 2) − 1/J²)], δ̂ = g for the moment method and δ for the likelihood method. The standard error is null
    /// when ν is 2 or less.
    /// </summary>
    public required Estimate Effect { get; init; }

    /// <summary>Number of values.</summary>
    public required int Count { get; init; }

    /// <summary>Number of cases.</summary>
    public required int Cases { get; init; }

    /// <summary>Change in units of y: mean over cases of the phase difference (moments), or its generalized-least-squares estimate.</summary>
    public double? RawChange { get; init; }

    /// <summary>Number of time-by-condition cells over which the spread between cases is pooled (moments).</summary>
    public int? Cells { get; init; }

    /// <summary>Total variance of a value, between and within cases.</summary>
    public double? TotalVariance { get; init; }

    /// <summary>Variance within cases.</summary>
    public double? WithinVariance { get; init; }

    /// <summary>Variance between cases (likelihood).</summary>
    public double? BetweenVariance { get; init; }

    /// <summary>Autocorrelation φ within cases.</summary>
    public double? Autocorrelation { get; init; }

    /// <summary>Share of the total variance that lies between cases.</summary>
    public double? IntraclassCorrelation { get; init; }

    /// <summary>The effect before its bias correction.</summary>
    public double? Unadjusted { get; init; }

    /// <summary>Standard error of the raw change in total standard deviations (θ or κ).</summary>
    public double? ChangeError { get; init; }

    /// <summary>Degrees of freedom ν of the total variance.</summary>
    public double? DegreesOfFreedom { get; init; }

    /// <summary>Sampling variance of <see cref="Effect"/>; null when ν is 2 or less.</summary>
    public double? Variance { get; init; }

    internal static BetweenCaseEffect NotDefined(string method, BetweenCaseSeries series, string reason) =>
        new() { Effect = Estimate.NotDefined(method, reason), Count = series.Count, Cases = series.Cases };

    /// <summary>1 − 3/(4x − 1).</summary>
    internal static double Correction(double degreesOfFreedom) => 1 - (3 / ((4 * degreesOfFreedom) - 1));
}
