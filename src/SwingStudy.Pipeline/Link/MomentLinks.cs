namespace SwingStudy.Pipeline.Link;

/// <summary>Links moments of a stream to the swings whose window of time holds them.</summary>
internal static class MomentLinks
{
    /// <summary>The links of one source's moments in a stay.</summary>
    /// <param name="source">The source with its window.</param>
    /// <param name="captures">Its moments, in order of time.</param>
    /// <param name="stay">The stay.</param>
    /// <param name="swings">Swings of each session, in order of time.</param>
    public static IEnumerable<CaptureLink> Of(
        MomentSource source, IEnumerable<Capture> captures, Stay stay, IReadOnlyDictionary<string, List<StruckSwing>> swings)
    {
        var (from, to) = ((long)(source.FromSeconds * 1000), (long)(source.ToSeconds * 1000));
        foreach (var own in captures.GroupBy(capture => SessionOf(capture, stay)))
        {
            List<StruckSwing> struck = own.Key is null ? [] : [.. swings.GetValueOrDefault(own.Key.Id, []).OrderBy(swing => swing.StruckMillis)];
            var first = 0;
            foreach (var capture in own)
            {
                while (first < struck.Count && struck[first].StruckMillis + to < capture.AtMillis)
                    first++;
                var isInside = first < struck.Count && struck[first].StruckMillis + from <= capture.AtMillis;
                yield return isInside
                    ? new CaptureLink(capture, LinkMethods.Window)
                    {
                        Swing = struck[first].Id, Participant = own.Key!.Participant, Session = own.Key.Id, StruckMillis = struck[first].StruckMillis, Confidence = 1,
                    }
                    : new CaptureLink(capture, LinkMethods.OutsideWindow) { Session = capture.Participant is null ? null : own.Key?.Id };
            }
        }
    }

    /// <summary>The session of the player whom the moment names, or the only one of the stay.</summary>
    private static PlayerSession? SessionOf(Capture capture, Stay stay)
    {
        var covering = stay.Sessions.Where(session => (capture.Participant is null || capture.Participant == session.Participant) && session.Covers(capture.AtMillis)).ToList();
        return capture.Participant is null && stay.Sessions.Count > 1 ? null : covering.FirstOrDefault();
    }
}
