using NodaTime;

namespace SwingStudy.Pipeline.Safety;

/// <summary>One value of a watched variable.</summary>
/// <param name="At">When.</param>
/// <param name="Value">Canonical unit; 1 for yes, 0 for no.</param>
internal sealed record WatchedValue(Instant At, double Value);
