using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>An interrupted time series fitted by one method.</summary>
public sealed record SegmentedFit
{
    /// <summary>The method word, such as <c>its-ols</c>.</summary>
    public required string Method { get; init; }

    /// <summary>Expected value at time 0 of the baseline line, in units of y.</summary>
    public required Estimate Intercept { get; init; }

    /// <summary>Baseline change for each step of time.</summary>
    public required Estimate Time { get; init; }

    /// <summary>Jump at the first value after the change against the continued baseline line.</summary>
    public required Estimate LevelChange { get; init; }

    /// <summary>Slope after the change minus baseline slope.</summary>
    public required Estimate SlopeChange { get; init; }

    /// <summary>Residual standard deviation, in units of y; its divisor belongs to the method. Null when the fit is undefined.</summary>
    public double? Sigma { get; init; }

    /// <summary>Share of variance explained; null where the method gives none.</summary>
    public double? RSquared { get; init; }

    /// <summary>Lag-1 autocorrelation of the errors; null where the method assumes or estimates none.</summary>
    public double? Autocorrelation { get; init; }

    /// <summary>Log-likelihood (restricted where the method is) at the optimum; null where the method has none.</summary>
    public double? LogLikelihood { get; init; }

    /// <summary>The four coefficients in the order intercept, time, level change, slope change.</summary>
    public IReadOnlyList<Estimate> Coefficients => [Intercept, Time, LevelChange, SlopeChange];

    /// <summary>Why there is no fit; null when there is one.</summary>
    public string? Undefined => Intercept.Undefined;

    internal static SegmentedFit NotDefined(string method, string reason)
    {
        var none = Estimate.NotDefined(method, reason);
        return new SegmentedFit { Method = method, Intercept = none, Time = none, LevelChange = none, SlopeChange = none };
    }
}
