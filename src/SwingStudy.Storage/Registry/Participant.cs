using NodaTime;
using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Storage.Registry;

/// <summary>One person in the study, by pseudonym alone.</summary>
/// <param name="Code">Pseudonym.</param>
/// <param name="Status"><c>enrolled</c>, <c>finished</c>, <c>withdrawn</c> or <c>erased</c>.</param>
/// <param name="AddedAt">When they were added.</param>
public sealed record Participant(ParticipantId Code, string Status, Instant AddedAt);
