namespace SwingStudy.Reporting.Rows;

/// <summary>A row of <c>effects</c>. Numbers are NaN where the table has none.</summary>
/// <param name="Participant">Pseudonym.</param>
/// <param name="Outcome">Variable.</param>
/// <param name="Contrast">Contrast of the protocol.</param>
/// <param name="Measure">Effect measure.</param>
/// <param name="Estimate">Estimate in <paramref name="Unit"/>.</param>
/// <param name="Low">Lower limit.</param>
/// <param name="High">Upper limit.</param>
/// <param name="P">p value.</param>
/// <param name="SwingsFrom">Swings before.</param>
/// <param name="SwingsTo">Swings after.</param>
/// <param name="SessionsFrom">Sessions before.</param>
/// <param name="SessionsTo">Sessions after.</param>
/// <param name="Unit">UCUM code; null for numbers without unit.</param>
/// <param name="Method">Method word.</param>
/// <param name="Planned">Named in the protocol.</param>
/// <param name="Undefined">Why there is no estimate.</param>
public sealed record EffectRow(
    string Participant,
    string Outcome,
    string Contrast,
    string Measure,
    double Estimate,
    double Low,
    double High,
    double P,
    long? SwingsFrom,
    long? SwingsTo,
    long? SessionsFrom,
    long? SessionsTo,
    string? Unit,
    string Method,
    bool Planned,
    string? Undefined)
{
    /// <summary>Measure of the share of a change that is still there, or carries over.</summary>
    public const string ShareKept = "share-kept";
}
