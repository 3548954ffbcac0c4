using NodaTime;
using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Storage.Registry;

/// <summary>Something recorded in a session: a note, ratings, an adverse event, or that somebody asked and there was none.</summary>
/// <param name="Id">Number; 0 before it is stored.</param>
/// <param name="Session">The session.</param>
/// <param name="Participant">Its player.</param>
/// <param name="Kind">One of the constants.</param>
/// <param name="At">The moment it is about.</param>
/// <param name="Actor">Who recorded it.</param>
/// <param name="Document">JSON object: for <see cref="Ratings"/> variable and value in canonical unit, for the others texts.</param>
public sealed record SessionEntry(long Id, string Session, ParticipantId Participant, string Kind, Instant At, string Actor, string Document)
{
    /// <summary>A remark in words.</summary>
    public const string Note = "note";

    /// <summary>Values of variables at a moment.</summary>
    public const string Ratings = "ratings";

    /// <summary>Somebody asked for adverse events and there was none.</summary>
    public const string Asked = "asked";

    /// <summary>An adverse event.</summary>
    public const string Incident = "incident";

    /// <summary>How an adverse event went on.</summary>
    public const string FollowUp = "follow-up";
}
