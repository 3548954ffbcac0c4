using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Running;

/// <summary>One share of a stage's work.</summary>
/// <param name="Name">Its name, the <c>tags.unit</c> of the files it writes: a session, a player, <c>study</c>.</param>
/// <param name="Participant">The player; null for the study, a day, and records that name nobody outside sessions.</param>
/// <param name="Session">The session; null for days, players, the study and what lies outside sessions.</param>
/// <param name="Times">The times that belong to it; empty where time does not divide the work.</param>
internal sealed record WorkUnit(string Name, string? Participant, SessionRecord? Session, IReadOnlyList<TimeRange> Times)
{
    /// <summary>Name of the one unit of a stage that works on the whole study.</summary>
    public const string Study = "study";

    /// <summary>Name of the unit of records that name nobody, outside the days of sessions.</summary>
    public const string Outside = "outside";

    /// <summary>Of a day: its sessions, in order of their names. Rows that a stage writes for a session carry the session's own name.</summary>
    public IReadOnlyList<WorkUnit> Sessions { get; init; } = [];

    /// <summary>Every name that files written for it may carry.</summary>
    public IEnumerable<string> Names => Sessions.Select(session => session.Name).Prepend(Name);

    /// <summary>Whether a file with rows of these times may hold rows of this unit. Rows without time belong to what lies outside sessions.</summary>
    /// <param name="participant">The player whose rows the file holds; null where they name nobody.</param>
    /// <param name="times">Times of the file.</param>
    public bool Touches(string? participant, FileTimes times) =>
        TimesOf(participant).Any(range => range.Touches(times.First, times.Last)) || (times.HasGaps && IsOutside && participant == Participant);

    /// <summary>Whether a row of this player, or of nobody, and of this time belongs to this unit.</summary>
    public bool Owns(string? participant, long millis) => TimesOf(participant).Any(range => range.Contains(millis));

    /// <summary>Whether all rows of a file belong to this unit alone in time, so that no neighbour will read it.</summary>
    public bool Encloses(string? participant, FileTimes times) =>
        TimesOf(participant).Any(range => range.Contains(times.First) && range.Contains(times.Last));

    private bool IsOutside => Session is null && Sessions.Count == 0;

    /// <summary>What names nobody belongs to a session by time alone: it may be of the session's player.</summary>
    private IEnumerable<TimeRange> TimesOf(string? participant)
    {
        if (participant is null)
            return Participant is null || Session is not null ? Times : [];
        return participant == Participant ? Times : Sessions.Where(session => session.Participant == participant).SelectMany(session => session.Times);
    }
}
