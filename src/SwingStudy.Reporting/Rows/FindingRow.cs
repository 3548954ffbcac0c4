namespace SwingStudy.Reporting.Rows;

/// <summary>A row of <c>findings</c>.</summary>
/// <param name="Scope"><c>player</c> or <c>study</c>.</param>
/// <param name="Participant">Pseudonym; null for the study.</param>
/// <param name="Outcome">Variable; null where the statement is about none.</param>
/// <param name="Contrast">Contrast; null where the statement is about none.</param>
/// <param name="Verdict">One of <see cref="Rows.Verdict"/>.</param>
/// <param name="Statement">The statement.</param>
/// <param name="Reasons">Its reasons.</param>
public sealed record FindingRow(
    string Scope, string? Participant, string? Outcome, string? Contrast, string Verdict, string Statement, IReadOnlyList<string> Reasons);
