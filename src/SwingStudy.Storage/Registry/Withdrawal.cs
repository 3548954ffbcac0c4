using NodaTime;
using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Storage.Registry;

/// <summary>A player has left: nothing more is taken in of them.</summary>
/// <param name="Participant">Who.</param>
/// <param name="KeepsEarlier">Whether the player lets what was taken before be analysed; otherwise it stays stored and does not count.</param>
/// <param name="At">When.</param>
/// <param name="Actor">Who recorded it.</param>
/// <param name="Note">Remark; no name. A player need not give a reason.</param>
public sealed record Withdrawal(ParticipantId Participant, bool KeepsEarlier, Instant At, string Actor, string? Note);
