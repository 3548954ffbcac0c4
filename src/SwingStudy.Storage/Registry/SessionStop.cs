using NodaTime;
using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Storage.Registry;

/// <summary>A session that a rule of the protocol stopped.</summary>
/// <param name="Session">The session.</param>
/// <param name="Participant">Its player.</param>
/// <param name="Evidence">What tells this stop from others of the session: the same evidence stops once.</param>
/// <param name="Rule">The rule in words.</param>
/// <param name="Detail">What was found.</param>
/// <param name="At">When it was found.</param>
public sealed record SessionStop(string Session, ParticipantId Participant, string Evidence, string Rule, string Detail, Instant At)
{
    /// <summary>Number; 0 before it is stored.</summary>
    public long Id { get; init; }

    /// <summary>When somebody let it go on; null while it is stopped.</summary>
    public Instant? ResumedAt { get; init; }

    /// <summary>Who let it go on.</summary>
    public string? ResumedBy { get; init; }

    /// <summary>Why.</summary>
    public string? ResumedReason { get; init; }
}
