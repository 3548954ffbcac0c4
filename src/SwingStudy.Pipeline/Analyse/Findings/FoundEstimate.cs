namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>An estimate as a table holds it; NaN where a number is missing.</summary>
/// <param name="Value">The estimate.</param>
/// <param name="StandardError">Its standard error.</param>
/// <param name="Low">Lower limit.</param>
/// <param name="High">Upper limit.</param>
/// <param name="P">p value.</param>
/// <param name="Method">Method words; what follows a semicolon is plain English.</param>
internal sealed record FoundEstimate(double Value, double StandardError, double Low, double High, double P, string Method)
{
    /// <summary>Whether both limits are known.</summary>
    public bool HasInterval => !double.IsNaN(Low) && !double.IsNaN(High);

    /// <summary>What the method says after its name.</summary>
    public string MethodDetail => Method.IndexOf("; ", StringComparison.Ordinal) is >= 0 and var at ? Method[(at + 2)..] : "";
}
