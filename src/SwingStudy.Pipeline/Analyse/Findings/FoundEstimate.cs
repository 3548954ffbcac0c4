namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>An estimate as a table holds it; NaN where a number is missing.</summary>
/// <param name="Value">The estimate.</param>
/// <param name="StandardError">Its standard error.</param>
/// <param name="Low">Lower limit.</param>
/// <param name="High">Upper limit.</param>
/// <param name="P">p value.</param>
internal sealed record FoundEstimate(double Value, double StandardError, double Low, double High, double P)
{
    /// <summary>Whether both limits are known.</summary>
    public bool HasInterval => !double.IsNaN(Low) && !double.IsNaN(High);
}
