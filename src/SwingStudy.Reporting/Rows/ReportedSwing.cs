using NodaTime;

namespace SwingStudy.Reporting.Rows;

/// <summary>One swing with its value of one outcome.</summary>
/// <param name="SwingId">The swing.</param>
/// <param name="Participant">Pseudonym.</param>
/// <param name="Session">Session.</param>
/// <param name="Phase">Phase; null when the session names none.</param>
/// <param name="StruckAt">Moment of impact; null when unknown.</param>
/// <param name="Value">Value in the canonical unit.</param>
/// <param name="Counts">Whether the analysis counts it: a swing at a ball, included, and the value not excluded by a flag.</param>
public sealed record ReportedSwing(string SwingId, string Participant, string Session, string? Phase, Instant? StruckAt, double Value, bool Counts);
