using SwingStudy.Domain.Findings;

namespace SwingStudy.Reporting.Rows;

/// <summary>A row of <c>findings</c>.</summary>
/// <param name="Scope"><c>player</c> or <c>study</c>.</param>
/// <param name="Participant">Pseudonym; null for the study.</param>
/// <param name="Outcome">Variable; null where the statement is about none.</param>
/// <param name="Contrast">Contrast; null where the statement is about none.</param>
/// <param name="Basis"><c>planned</c>, <c>amended</c> or <c>exploratory</c>.</param>
/// <param name="Verdict">One of <see cref="Rows.Verdict"/>.</param>
/// <param name="Statement">The statement.</param>
/// <param name="Reasons">Its reasons.</param>
public sealed record FindingRow(
    string Scope, string? Participant, string? Outcome, string? Contrast, string Basis, string Verdict, string Statement, IReadOnlyList<Reason> Reasons)
{
    /// <summary>Basis of a comparison that the protocol names before data.</summary>
    public const string PlannedBasis = "planned";

    /// <summary>Whether the protocol named the comparison before data.</summary>
    public bool IsPlanned => Basis == PlannedBasis;

    /// <summary>Reasons of one kind, in their order.</summary>
    public IEnumerable<Reason> Of(ReasonKind kind) => Reasons.Where(reason => reason.Kind == kind);
}
