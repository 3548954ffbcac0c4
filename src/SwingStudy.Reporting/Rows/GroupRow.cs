namespace SwingStudy.Reporting.Rows;

/// <summary>A row of <c>group_effects</c>. Numbers are NaN where the table has none.</summary>
/// <param name="Outcome">Variable.</param>
/// <param name="Contrast">Contrast.</param>
/// <param name="Measure">Effect measure.</param>
/// <param name="Estimate">Estimate in <paramref name="Unit"/>.</param>
/// <param name="Low">Lower limit.</param>
/// <param name="High">Upper limit.</param>
/// <param name="P">p value.</param>
/// <param name="AdjustedP">p value adjusted for the planned comparisons.</param>
/// <param name="ISquared">Percent of the variation that is between players.</param>
/// <param name="PredictionLow">Lower limit for a further player.</param>
/// <param name="PredictionHigh">Upper limit for a further player.</param>
/// <param name="Players">Players.</param>
/// <param name="Unit">UCUM code; null for numbers without unit.</param>
/// <param name="Method">Method words.</param>
/// <param name="Planned">Named in the protocol.</param>
/// <param name="Undefined">Why there is no estimate.</param>
public sealed record GroupRow(
    string Outcome,
    string Contrast,
    string Measure,
    double Estimate,
    double Low,
    double High,
    double P,
    double AdjustedP,
    double ISquared,
    double PredictionLow,
    double PredictionHigh,
    long? Players,
    string? Unit,
    string Method,
    bool Planned,
    string? Undefined)
{
    /// <summary>Measure of the mean change over players.</summary>
    public const string Difference = "difference";

    /// <summary>Measure of the standard deviation of true changes.</summary>
    public const string IndividualResponse = "individual-response-sd";

    /// <summary>Measure of the count of players whose change is supported.</summary>
    public const string PlayersSupported = "players-supported";

    /// <summary>Measure of the randomization test over players drawn together.</summary>
    public const string RandomizationTest = "randomization-test";
}
