namespace SwingStudy.Pipeline.Link;

/// <summary>One capture's place.</summary>
/// <param name="Capture">The capture.</param>
/// <param name="Swing">Its swing; null when none was found.</param>
/// <param name="Method">One of <see cref="LinkMethods"/>.</param>
/// <param name="ResidualSeconds">Time left between the devices after the clock offset; null where clocks were not compared.</param>
/// <param name="Confidence">0 to 1; null where nothing was matched.</param>
internal sealed record CaptureLink(Capture Capture, string? Swing, string Method, double? ResidualSeconds, double? Confidence);
