namespace SwingStudy.Pipeline.Screen;

/// <summary>One finding of screening.</summary>
/// <param name="Swing">The swing; null when the capture belongs to none.</param>
/// <param name="Capture">The capture, where one alone is meant.</param>
/// <param name="Variable">The variable; null when the whole swing is meant.</param>
/// <param name="Rule">The rule, or <see cref="Decided"/>.</param>
/// <param name="Action">keep, exclude-value or exclude-swing.</param>
/// <param name="Detail">What was found, or the person's reason.</param>
/// <param name="DecidedBy"><see cref="ByRule"/>, or the person who decided.</param>
internal sealed record Flag(string? Swing, string? Capture, string? Variable, string Rule, string Action, string Detail, string DecidedBy)
{
    /// <summary>The <c>rule</c> of a human decision.</summary>
    public const string Decided = "decision";

    /// <summary>The <c>decided_by</c> of a rule.</summary>
    public const string ByRule = "rule";

    /// <summary>The swing or value counts.</summary>
    public const string Keep = "keep";

    /// <summary>The value does not count.</summary>
    public const string ExcludeValue = "exclude-value";

    /// <summary>The swing does not count.</summary>
    public const string ExcludeSwing = "exclude-swing";
}
