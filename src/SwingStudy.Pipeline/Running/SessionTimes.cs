using NodaTime;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Running;

/// <summary>Which time belongs to which session of a player.</summary>
/// <remarks>
/// A session begins <see cref="LeadMinutes"/> before its start (warming up, a log written a little late), but not before the study's local midnight
/// and not before the middle between its start and that of the session before. It ends where the player's next session begins, at the latest at
/// the end of the local day. What is left over is outside all sessions.
/// </remarks>
internal static class SessionTimes
{
    /// <summary>How long before its noted start a session begins, in minutes.</summary>
    public const int LeadMinutes = 15;

    /// <summary>The units of one player: each session, then the time outside them.</summary>
    /// <param name="participant">The player.</param>
    /// <param name="sessions">All sessions of that player.</param>
    /// <param name="zone">The study's zone.</param>
    public static IReadOnlyList<WorkUnit> Units(string participant, IEnumerable<SessionRecord> sessions, DateTimeZone zone)
    {
        var ordered = sessions.OrderBy(session => session.StartedAt).ThenBy(session => session.Id, StringComparer.Ordinal).ToList();
        var begins = new long[ordered.Count];
        for (var i = 0; i < begins.Length; i++)
            begins[i] = Begin(ordered[i], i == 0 ? null : ordered[i - 1], zone);
        var units = new List<WorkUnit>();
        var outside = new List<TimeRange>();
        var free = long.MinValue;
        for (var i = 0; i < begins.Length; i++)
        {
            var end = DayOf(ordered[i], zone).End.ToUnixTimeMilliseconds();
            var to = i + 1 < begins.Length ? Math.Min(end, begins[i + 1]) : end;
            units.Add(new WorkUnit(ordered[i].Id, participant, ordered[i], [new TimeRange(begins[i], to)]));
            outside.Add(new TimeRange(free, begins[i]));
            free = to;
        }

        outside.Add(new TimeRange(free, long.MaxValue));
        units.Add(new WorkUnit($"{participant}-outside", participant, null, [.. outside.Where(range => range.FromMillis < range.ToMillis)]));
        return units;
    }

    private static long Begin(SessionRecord session, SessionRecord? before, DateTimeZone zone)
    {
        var begin = Instant.Max(session.StartedAt - Duration.FromMinutes(LeadMinutes), DayOf(session, zone).Start);
        if (before is not null)
            begin = Instant.Max(begin, before.StartedAt + ((session.StartedAt - before.StartedAt) / 2));
        return begin.ToUnixTimeMilliseconds();
    }

    private static Interval DayOf(SessionRecord session, DateTimeZone zone)
    {
        var day = session.StartedAt.InZone(zone).Date;
        return new Interval(zone.AtStartOfDay(day).ToInstant(), zone.AtStartOfDay(day.PlusDays(1)).ToInstant());
    }
}
