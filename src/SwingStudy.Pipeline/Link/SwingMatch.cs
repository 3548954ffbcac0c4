namespace SwingStudy.Pipeline.Link;

/// <summary>A person's decision about one capture.</summary>
/// <param name="Capture">The capture.</param>
/// <param name="Swing">Its swing; null when it belongs to none.</param>
/// <param name="With">A capture of that swing, which names the swing for good, whatever its number becomes; null in decisions that name the swing alone.</param>
internal sealed record SwingMatch(string Capture, string? Swing, string? With);
