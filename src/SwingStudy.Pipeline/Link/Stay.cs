namespace SwingStudy.Pipeline.Link;

/// <summary>A stay at the station: the session of one player, or those of players who took turns, with what devices recorded meanwhile.</summary>
/// <param name="Sessions">Its sessions, in order of their names.</param>
/// <param name="Captures">Captures of its players, and those that name nobody, in order of time.</param>
internal sealed record Stay(IReadOnlyList<PlayerSession> Sessions, IReadOnlyList<Capture> Captures)
{
    /// <summary>A capture before a session is likelier to be of it (plates are zeroed before the player steps on them) than one after it.</summary>
    private const int AfterWeight = 3;

    /// <summary>Parts a day into stays.</summary>
    /// <remarks>
    /// A session lasts from the first to the last record of its swings that names its player, as its preferred source tells; without such records from its noted
    /// start to the next one's. Sessions of different players at one place whose times overlap are one stay. What names nobody goes to the nearest stay.
    /// </remarks>
    /// <param name="sessions">All sessions of the day.</param>
    /// <param name="captures">Captures of the day, in order of time.</param>
    /// <param name="settings">Settings.</param>
    public static (IReadOnlyList<Stay> Stays, IReadOnlyList<Capture> Left) Of(
        IReadOnlyList<PlayerSession> sessions, IReadOnlyList<Capture> captures, LinkSettings settings)
    {
        var moments = settings.Moments.Select(moments => moments.Source).ToHashSet(StringComparer.Ordinal);
        var swings = captures.Where(capture => capture.Purpose == Capture.Swing && !moments.Contains(capture.Source)).ToLookup(Known);
        var spans = sessions.ToDictionary(session => session.Id, session => SpanOf(session, sessions, [.. swings[session]], settings), StringComparer.Ordinal);
        var stayOf = Joined(sessions, spans);
        var own = sessions.ToDictionary(session => session.Id, _ => new List<Capture>(), StringComparer.Ordinal);
        var left = new List<Capture>();
        foreach (var capture in captures)
        {
            var session = capture.Participant is null ? Nearest(capture.AtMillis, sessions, spans) : Known(capture);
            if (session is null)
                left.Add(capture);
            else
                own[stayOf[session.Id]].Add(capture);
        }

        return ([.. sessions.GroupBy(session => stayOf[session.Id]).Select(group => new Stay([.. group], own[group.Key]))], left);

        PlayerSession? Known(Capture capture) => capture.Participant is null
            ? null
            : sessions.FirstOrDefault(session => session.Participant == capture.Participant && session.Covers(capture.AtMillis));
    }

    private static (long From, long To) SpanOf(PlayerSession session, IReadOnlyList<PlayerSession> sessions, IReadOnlyList<Capture> known, LinkSettings settings)
    {
        var best = known.GroupBy(capture => capture.Source).OrderBy(source => settings.Rank(source.Key)).ThenBy(source => source.Key, StringComparer.Ordinal).FirstOrDefault();
        if (best is not null)
            return (best.Min(capture => capture.AtMillis), best.Max(capture => capture.AtMillis));
        var next = sessions.Where(other => other.StartMillis > session.StartMillis && session.MayShareSite(other)).Select(other => other.StartMillis).DefaultIfEmpty(session.Times.ToMillis).Min();
        return (session.StartMillis, Math.Min(next, session.Times.ToMillis) - 1);
    }

    /// <summary>For each session, the first one of its stay.</summary>
    private static Dictionary<string, string> Joined(IReadOnlyList<PlayerSession> sessions, Dictionary<string, (long From, long To)> spans)
    {
        var stayOf = sessions.ToDictionary(session => session.Id, session => session.Id, StringComparer.Ordinal);
        for (var i = 0; i < sessions.Count; i++)
        {
            for (var j = i + 1; j < sessions.Count; j++)
            {
                var (one, other) = (spans[sessions[i].Id], spans[sessions[j].Id]);
                var (kept, given) = (stayOf[sessions[i].Id], stayOf[sessions[j].Id]);
                if (kept == given || sessions[i].Participant == sessions[j].Participant || one.From > other.To || other.From > one.To || !sessions[i].MayShareSite(sessions[j]))
                    continue;
                foreach (var session in sessions.Where(session => stayOf[session.Id] == given))
                    stayOf[session.Id] = kept;
            }
        }

        return stayOf;
    }

    private static PlayerSession? Nearest(long millis, IReadOnlyList<PlayerSession> sessions, Dictionary<string, (long From, long To)> spans) => sessions
        .Where(session => session.Covers(millis))
        .MinBy(session => spans[session.Id] is var (from, to) && millis < from ? from - millis : Math.Max(0, (millis - to) * AfterWeight));
}
