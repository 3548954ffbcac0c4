using NodaTime;

namespace SwingStudy.Pipeline.Safety;

/// <summary>One swing as one source recorded it, with the values that stop rules watch.</summary>
/// <param name="Source">The source.</param>
/// <param name="At">When.</param>
/// <param name="IsPractice">Practice swing.</param>
/// <param name="Intent">How it was meant; null where nobody said.</param>
/// <param name="Values">Watched variables with a value.</param>
internal sealed record WatchedSwing(string Source, Instant At, bool IsPractice, string? Intent, IReadOnlyDictionary<string, double> Values);
