namespace SwingStudy.Pipeline.Link;

/// <summary>The links and clocks of one day.</summary>
/// <param name="Links">The link of every capture; a recording of empty plates or quiet standing has one for each session of its stay.</param>
/// <param name="Clocks">The clocks of devices.</param>
internal sealed record DayLinks(IReadOnlyList<CaptureLink> Links, IReadOnlyList<ClockRow> Clocks)
{
    /// <summary>Links the captures of a day.</summary>
    /// <param name="sessions">Its sessions, in order of their names.</param>
    /// <param name="captures">Captures that no revision replaces, in order of time.</param>
    /// <param name="decisions">What people decided, oldest first.</param>
    /// <param name="settings">Settings.</param>
    public static DayLinks Of(
        IReadOnlyList<PlayerSession> sessions, IReadOnlyList<Capture> captures, IReadOnlyList<SwingMatch> decisions, LinkSettings settings)
    {
        var moments = settings.Moments.ToDictionary(moments => moments.Source, StringComparer.Ordinal);
        var (stays, left) = Stay.Of(sessions, captures, settings);
        var links = left.Select(capture => new CaptureLink(capture, LinkMethods.NoSession)).ToList();
        var clocks = new List<ClockRow>();
        var swings = new List<StruckSwing>();
        var kinds = stays.Select(stay => stay.Captures.ToLookup(capture =>
            capture.Purpose != Capture.Swing ? Kind.Session : moments.ContainsKey(capture.Source) ? Kind.Moment : Kind.Swing)).ToList();
        var joined = Joined(stays, [.. kinds.Select(kind => kind[Kind.Swing].ToList())], settings);
        for (var i = 0; i < stays.Count; i++)
        {
            links.AddRange(joined[i].Links);
            links.AddRange(kinds[i][Kind.Session].SelectMany(capture => OfSession(capture, stays[i])));
            foreach (var source in kinds[i][Kind.Moment].GroupBy(capture => capture.Source))
                links.AddRange(MomentLinks.Of(moments[source.Key], source, stays[i], joined[i].Swings));
            clocks.AddRange(joined[i].Clocks());
            swings.AddRange(joined[i].Swings.Values.SelectMany(own => own));
        }

        Follow(decisions, links, swings);
        return new DayLinks([.. links.OrderBy(link => link.Capture.AtMillis).ThenBy(link => link.Capture.Id, StringComparer.Ordinal).ThenBy(link => link.Session, StringComparer.Ordinal)],
            clocks);
    }

    private enum Kind
    {
        Swing,
        Session,
        Moment,
    }

    /// <summary>Links each stay by itself, then once more where other stays of the day tell how a clock of it drifts.</summary>
    private static IReadOnlyList<StayLinks> Joined(IReadOnlyList<Stay> stays, IReadOnlyList<IReadOnlyList<Capture>> captures, LinkSettings settings)
    {
        List<StayLinks> first = [.. stays.Select((stay, i) => StayLinks.Of(stay, captures[i], settings, (_, _) => null))];
        var drifts = DayDrifts.Of(first);
        return [.. first.Select((own, i) => drifts.Tell(i) ? StayLinks.Of(stays[i], captures[i], settings, (device, reference) => drifts.Expected(i, device, reference)) : own)];
    }

    /// <summary>A recording of no swing belongs to every session of its stay whose time covers it and whose player it may be of.</summary>
    private static List<CaptureLink> OfSession(Capture capture, Stay stay)
    {
        List<CaptureLink> own = [.. stay.Sessions
            .Where(session => (capture.Participant is null || capture.Participant == session.Participant) && session.Covers(capture.AtMillis))
            .Select(session => new CaptureLink(capture, capture.Purpose) { Participant = session.Participant, Session = session.Id, Confidence = 1 })];
        return own.Count > 0 ? own : [new CaptureLink(capture, LinkMethods.NoSession)];
    }

    /// <summary>Decisions come last and win; one that names a swing that does not exist, or is of a session that does not cover the capture, is void.</summary>
    private static void Follow(IReadOnlyList<SwingMatch> decisions, List<CaptureLink> links, List<StruckSwing> swings)
    {
        var latest = decisions.GroupBy(decision => decision.Capture).ToDictionary(group => group.Key, group => group.Last(), StringComparer.Ordinal);
        if (latest.Count == 0)
            return;
        var known = swings.ToDictionary(swing => swing.Id, StringComparer.Ordinal);
        var swingOf = links.Where(link => link.Swing is not null).DistinctBy(link => link.Capture.Id).ToDictionary(link => link.Capture.Id, link => link.Swing!, StringComparer.Ordinal);
        for (var i = 0; i < links.Count; i++)
        {
            if (links[i].Method == LinkMethods.Skeleton || !latest.TryGetValue(links[i].Capture.Id, out var decision))
                continue;
            if (decision is { Swing: null, With: null })
            {
                links[i] = links[i] with { Swing = null, StruckMillis = null, Method = LinkMethods.Decision, Confidence = 1, Candidate = null };
                continue;
            }

            var named = decision.With is { } with ? swingOf.GetValueOrDefault(with) : decision.Swing;
            if (named is null || !known.TryGetValue(named, out var swing) || !swing.Session.Covers(links[i].Capture.AtMillis)
                || (links[i].Capture.Participant is { } player && player != swing.Session.Participant))
                continue;
            links[i] = links[i] with
            {
                Swing = swing.Id,
                Participant = swing.Session.Participant,
                Session = swing.Session.Id,
                StruckMillis = swing.StruckMillis,
                Method = LinkMethods.Decision,
                Confidence = 1,
                Candidate = null,
            };
        }
    }
}
