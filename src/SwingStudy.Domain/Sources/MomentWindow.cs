namespace SwingStudy.Domain.Sources;

/// <summary>Which moments of a stream belong to a swing: those from <paramref name="FromSeconds"/> to <paramref name="ToSeconds"/> relative to impact, averaged.</summary>
/// <param name="FromSeconds">Start, negative = before impact.</param>
/// <param name="ToSeconds">End, not before the start.</param>
public sealed record MomentWindow(double FromSeconds, double ToSeconds);
