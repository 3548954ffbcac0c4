namespace SwingStudy.Reporting.Rows;

/// <summary>A row of <c>flags</c>.</summary>
/// <param name="SwingId">Swing; null when the flag is about a capture without one.</param>
/// <param name="Participant">Pseudonym.</param>
/// <param name="Variable">Variable; null when the whole swing is meant.</param>
/// <param name="Rule">Rule.</param>
/// <param name="Action"><c>keep</c>, <c>exclude-value</c> or <c>exclude-swing</c>.</param>
public sealed record FlagRow(string? SwingId, string Participant, string? Variable, string Rule, string Action)
{
    /// <summary>The <c>rule</c> of a human decision, which overrules every rule.</summary>
    public const string Decision = "decision";

    /// <summary>Action that takes one value out of the analysis.</summary>
    public const string ExcludeValue = "exclude-value";

    /// <summary>Action that takes a whole swing out of the analysis.</summary>
    public const string ExcludeSwing = "exclude-swing";
}
