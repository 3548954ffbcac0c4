namespace SwingStudy.Reporting.Rows;

/// <summary>A row of <c>curve_tests</c>. Numbers are NaN where the table has none.</summary>
/// <param name="Participant">Pseudonym.</param>
/// <param name="Channel">Channel.</param>
/// <param name="Contrast">Contrast of the protocol.</param>
/// <param name="Measure">largest-t, span-t or span-mass.</param>
/// <param name="From">Start of the span on the axis of the curves; NaN for the whole curve.</param>
/// <param name="To">End of the span.</param>
/// <param name="Statistic">Largest |t|, or the size of the sum of t.</param>
/// <param name="Direction">higher or lower after than before.</param>
/// <param name="P">p value over the whole curve.</param>
/// <param name="Permuted">What was exchanged between phases; null without a test.</param>
/// <param name="SwingsFrom">Swings before.</param>
/// <param name="SwingsTo">Swings after.</param>
/// <param name="SessionsFrom">Sessions before.</param>
/// <param name="SessionsTo">Sessions after.</param>
/// <param name="Method">Method word.</param>
/// <param name="Undefined">Why there is no test.</param>
public sealed record CurveTestRow(
    string Participant,
    string Channel,
    string Contrast,
    string Measure,
    double From,
    double To,
    double Statistic,
    string? Direction,
    double P,
    string? Permuted,
    long? SwingsFrom,
    long? SwingsTo,
    long? SessionsFrom,
    long? SessionsTo,
    string Method,
    string? Undefined)
{
    /// <summary>The whole curve.</summary>
    public const string Whole = "largest-t";

    /// <summary>A span beyond the threshold.</summary>
    public const string Span = "span-t";
}
