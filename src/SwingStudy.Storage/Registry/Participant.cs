using NodaTime;
using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Storage.Registry;

/// <summary>One person in the study, by pseudonym alone.</summary>
/// <param name="Code">Pseudonym.</param>
/// <param name="Status"><see cref="Enrolled"/>, <see cref="Withdrawn"/> or <see cref="BeingErased"/>.</param>
/// <param name="AddedAt">When they were added.</param>
public sealed record Participant(ParticipantId Code, string Status, Instant AddedAt)
{
    /// <summary>Takes part.</summary>
    public const string Enrolled = "enrolled";

    /// <summary>Has left; nothing more is taken in.</summary>
    public const string Withdrawn = "withdrawn";

    /// <summary>An erasure began and is not done.</summary>
    public const string BeingErased = "being-erased";
}
