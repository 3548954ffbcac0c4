using NodaTime;

namespace SwingStudy.Pipeline.Safety;

/// <summary>What stop rules see of one session.</summary>
/// <param name="Id">The session.</param>
/// <param name="Day">Its day in the study's zone.</param>
/// <param name="Swings">Its swings, source by source, in order of time.</param>
/// <param name="Recorded">Values that people recorded for the session or during it, by variable, in order of time.</param>
/// <param name="Intent">How the whole session was meant; null where nobody said.</param>
internal sealed record WatchedSession(
    string Id, LocalDate Day, IReadOnlyList<WatchedSwing> Swings, IReadOnlyDictionary<string, IReadOnlyList<WatchedValue>> Recorded, string? Intent)
{
    /// <summary>Swings of an intent, or all: those of the source that recorded most, so that two devices do not count one swing twice.</summary>
    public int Count(string? intent) => Swings.Where(swing => Fits(swing, intent)).GroupBy(swing => swing.Source).Select(source => source.Count()).DefaultIfEmpty(0).Max();

    /// <summary>Whether a swing was meant so; a swing of which nothing is said was meant as its session.</summary>
    public bool Fits(WatchedSwing swing, string? intent) => intent is null || (swing.Intent ?? Intent) == intent;
}
