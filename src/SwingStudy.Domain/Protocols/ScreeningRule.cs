namespace SwingStudy.Domain.Protocols;

/// <summary>One screening rule of a protocol. Rules never see the phase.</summary>
/// <param name="Rule">Name of the rule: <c>impossible</c>, <c>outside-typical</c>, <c>robust-outlier</c>, <c>ratio-limit</c>, <c>repeated-value</c>, <c>unit-jump</c>.</param>
/// <param name="Variables">Variables it looks at; empty: those the rule names by itself.</param>
/// <param name="Action">What it does.</param>
/// <param name="Settings">Limits of the rule by name, canonical units; defaults hold where a name is not given.</param>
/// <param name="Why">Reason.</param>
public sealed record ScreeningRule(
    string Rule,
    IReadOnlyList<string> Variables,
    ScreeningAction Action,
    IReadOnlyDictionary<string, double> Settings,
    string Why)
{
    /// <summary>Line of the protocol file, for messages.</summary>
    public int Line { get; init; }
}
