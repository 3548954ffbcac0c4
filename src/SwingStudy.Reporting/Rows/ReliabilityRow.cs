namespace SwingStudy.Reporting.Rows;

/// <summary>A row of <c>reliability</c>. Numbers are NaN where the table has none.</summary>
/// <param name="Outcome">Variable.</param>
/// <param name="Level">What is compared.</param>
/// <param name="Coefficient">Coefficient.</param>
/// <param name="Estimate">Estimate in <paramref name="Unit"/>.</param>
/// <param name="Low">Lower limit.</param>
/// <param name="High">Upper limit.</param>
/// <param name="Players">Players.</param>
/// <param name="Unit">UCUM code; null for numbers without unit.</param>
/// <param name="Method">Method word.</param>
/// <param name="Undefined">Why there is no estimate.</param>
public sealed record ReliabilityRow(
    string Outcome, string Level, string Coefficient, double Estimate, double Low, double High, long? Players, string? Unit, string Method, string? Undefined);
