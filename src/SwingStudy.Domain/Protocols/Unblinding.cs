using NodaTime;

namespace SwingStudy.Domain.Protocols;

/// <summary>The act that ended the analyst's blindness.</summary>
/// <param name="At">When.</param>
/// <param name="Actor">Who.</param>
/// <param name="Reason">Why.</param>
/// <param name="Known">What was already known, in words; null when nothing was said.</param>
public sealed record Unblinding(Instant At, string Actor, string Reason, string? Known);
