namespace SwingStudy.Domain.Protocols;

/// <summary>One outcome in one contrast, as a version of the protocol plans it.</summary>
/// <param name="Outcome">Name of the variable.</param>
/// <param name="Contrast">Name of the contrast.</param>
/// <param name="From">Phase before.</param>
/// <param name="To">Phase after.</param>
/// <param name="Role">What the outcome is for: <c>primary</c>, <c>secondary</c>, <c>mechanism</c>, <c>safety</c>.</param>
/// <param name="Worthwhile">Smallest worthwhile change, canonical unit; null where nobody could say.</param>
public sealed record PlannedComparison(string Outcome, string Contrast, string From, string To, string Role, double? Worthwhile)
{
    /// <summary>All comparisons that a protocol plans, outcomes in its order.</summary>
    public static IReadOnlyList<PlannedComparison> Of(Protocol protocol) =>
    [
        .. from outcome in protocol.Outcomes
           from contrast in protocol.Contrasts
           where outcome.Contrasts.Count == 0 || outcome.Contrasts.Contains(contrast.Name)
           select new PlannedComparison(
               outcome.Variable, contrast.Name, contrast.From, contrast.To, Identifiers.Word.Of(outcome.Role), outcome.SmallestWorthwhile?.Amount),
    ];
}
