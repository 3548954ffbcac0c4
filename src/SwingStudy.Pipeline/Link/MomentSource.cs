namespace SwingStudy.Pipeline.Link;

/// <summary>A source whose rows are moments of a stream, and which of them belong to a swing.</summary>
/// <param name="Source">Name of the source.</param>
/// <param name="FromSeconds">First moment, relative to impact.</param>
/// <param name="ToSeconds">Last moment, relative to impact.</param>
internal sealed record MomentSource(string Source, double FromSeconds, double ToSeconds);
