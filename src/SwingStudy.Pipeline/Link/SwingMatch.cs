namespace SwingStudy.Pipeline.Link;

/// <summary>A person's decision about one capture.</summary>
/// <param name="Capture">The capture.</param>
/// <param name="Swing">Its swing; null when it belongs to none.</param>
internal sealed record SwingMatch(string Capture, string? Swing);
