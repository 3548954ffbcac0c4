using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Running;

/// <summary>One share of a stage's work.</summary>
/// <param name="Name">Its name, the <c>tags.unit</c> of the files it writes: a session, a player, <c>study</c>.</param>
/// <param name="Participant">The player; null for the study.</param>
/// <param name="Session">The session; null for players, the study and what lies outside sessions.</param>
/// <param name="Times">The times that belong to it; empty where time does not divide the work.</param>
internal sealed record WorkUnit(string Name, string? Participant, SessionRecord? Session, IReadOnlyList<TimeRange> Times)
{
    /// <summary>Name of the one unit of a stage that works on the whole study.</summary>
    public const string Study = "study";

    /// <summary>Whether a file with rows of these times may hold rows of this unit.</summary>
    public bool Touches(FileTimes times) => Times.Any(range => range.Touches(times.First, times.Last)) || (Session is null && times.HasGaps);

    /// <summary>Whether a row of this time belongs to this unit. Rows without time belong to what lies outside sessions.</summary>
    public bool Owns(long millis) => Times.Any(range => range.Contains(millis));
}
