namespace SwingStudy.Domain.Protocols;

/// <summary>How effects are computed.</summary>
public sealed record AnalysisPlan
{
    /// <summary>Effect measures: <c>difference</c>, <c>percent-change</c>, <c>hedges-g</c>, <c>log-response-ratio</c>.</summary>
    public IReadOnlyList<string> Measures { get; init; } = ["difference", "percent-change", "hedges-g", "log-response-ratio"];

    /// <summary>Confidence level as a share.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Resamples of resampling methods.</summary>
    public int Resamples { get; init; } = 10_000;

    /// <summary>Seed of all chance in the study.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Adjustment for many comparisons: <c>holm</c>, <c>hochberg</c>, <c>benjamini-hochberg</c> or <c>none</c>.</summary>
    public string Multiplicity { get; init; } = "holm";

    /// <summary>Denominator of the standardized mean difference: <c>pooled</c> or <c>baseline</c>.</summary>
    public string Standardizer { get; init; } = "pooled";

    /// <summary>Reason for its numbers.</summary>
    public string Why { get; init; } = "";
}
