using NodaTime;
using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Storage.Registry;

/// <summary>One consent given or taken back.</summary>
/// <param name="Participant">Who.</param>
/// <param name="Scope">What for: <c>study</c>, <c>reuse</c>, <c>video</c>.</param>
/// <param name="Given">False when it was taken back.</param>
/// <param name="ByGuardian">A guardian signed for a minor.</param>
/// <param name="At">When.</param>
/// <param name="Note">Remark; no name.</param>
public sealed record Consent(ParticipantId Participant, string Scope, bool Given, bool ByGuardian, Instant At, string? Note);
