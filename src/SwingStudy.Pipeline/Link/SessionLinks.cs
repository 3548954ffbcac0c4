using System.Globalization;

namespace SwingStudy.Pipeline.Link;

/// <summary>Links the captures of one session to swings.</summary>
internal sealed class SessionLinks
{
    private readonly LinkSettings _settings;
    private readonly List<CaptureLink> _links = [];
    private readonly List<Capture> _skeleton;
    private readonly List<string> _swings;

    private SessionLinks(string session, IReadOnlyList<Capture> current, LinkSettings settings)
    {
        _settings = settings;
        var moments = settings.Moments.Select(source => source.Source).ToHashSet(StringComparer.Ordinal);
        var bySource = current.GroupBy(capture => capture.Source).OrderBy(group => Rank(group.Key)).ThenBy(group => group.Key, StringComparer.Ordinal).ToList();
        var swingSources = bySource.Where(group => !moments.Contains(group.Key)).ToList();
        _skeleton = swingSources.Count > 0 ? [.. swingSources[0]] : [];
        _swings = [.. _skeleton.Select((_, i) => string.Create(CultureInfo.InvariantCulture, $"{session}-{i + 1:00}"))];
        for (var i = 0; i < _skeleton.Count; i++)
            _links.Add(new CaptureLink(_skeleton[i], _swings[i], LinkMethods.Skeleton, null, 1));
        foreach (var source in swingSources.Skip(1))
            MatchByTime([.. source]);
        foreach (var source in settings.Moments)
            AssignMoments(source, current.Where(capture => capture.Source == source.Source));
    }

    /// <summary>The link of every capture, in order of time.</summary>
    /// <param name="session">Identifier of the session.</param>
    /// <param name="current">Captures within its time that no revision replaces, in order of time.</param>
    /// <param name="decisions">What people decided.</param>
    /// <param name="settings">Settings.</param>
    public static IReadOnlyList<CaptureLink> Of(string session, IReadOnlyList<Capture> current, IReadOnlyList<SwingMatch> decisions, LinkSettings settings)
    {
        var links = new SessionLinks(session, current, settings);
        links.Follow(decisions);
        return links._links;
    }

    /// <summary>Confidence without trailing noise of division, so that it reads well.</summary>
    private static double Rounded(double confidence) => Math.Round(confidence, 3);

    private int Rank(string source)
    {
        for (var i = 0; i < _settings.PreferredSources.Count; i++)
        {
            if (_settings.PreferredSources[i] == source)
                return i;
        }

        return int.MaxValue;
    }

    private void MatchByTime(List<Capture> captures)
    {
        var match = ClockMatch.Between(
            [.. _skeleton.Select(capture => capture.StruckMillis)], [.. captures.Select(capture => capture.StruckMillis)], (long)(_settings.ToleranceSeconds * 1000));
        var pairOf = match.Pairs.ToDictionary(pair => pair.Device);
        var confidence = Rounded(match.Confidence);
        for (var i = 0; i < captures.Count; i++)
        {
            if (!pairOf.TryGetValue(i, out var pair))
                _links.Add(new CaptureLink(captures[i], null, LinkMethods.MissedOrFalse, null, null));
            else if (match.Confidence < _settings.LeastConfidence)
                _links.Add(new CaptureLink(captures[i], null, LinkMethods.LowConfidence, pair.ResidualMillis / 1000.0, confidence));
            else
                _links.Add(new CaptureLink(captures[i], _swings[pair.Reference], LinkMethods.Time, pair.ResidualMillis / 1000.0, confidence));
        }
    }

    private void AssignMoments(MomentSource source, IEnumerable<Capture> captures)
    {
        var (from, to) = ((long)(source.FromSeconds * 1000), (long)(source.ToSeconds * 1000));
        var first = 0;
        foreach (var capture in captures)
        {
            while (first < _skeleton.Count && _skeleton[first].StruckMillis + to < capture.StruckMillis)
                first++;
            var inside = first < _skeleton.Count && _skeleton[first].StruckMillis + from <= capture.StruckMillis;
            _links.Add(inside
                ? new CaptureLink(capture, _swings[first], LinkMethods.Window, null, 1)
                : new CaptureLink(capture, null, LinkMethods.OutsideWindow, null, null));
        }
    }

    /// <summary>Decisions come last and win; one that names a swing the session does not have is void.</summary>
    private void Follow(IReadOnlyList<SwingMatch> decisions)
    {
        var latest = decisions.GroupBy(decision => decision.Capture).ToDictionary(group => group.Key, group => group.Last(), StringComparer.Ordinal);
        for (var i = 0; i < _links.Count; i++)
        {
            if (_links[i].Method != LinkMethods.Skeleton && latest.TryGetValue(_links[i].Capture.Id, out var decision)
                && (decision.Swing is null || _swings.Contains(decision.Swing)))
                _links[i] = _links[i] with { Swing = decision.Swing, Method = LinkMethods.Decision, Confidence = 1 };
        }
    }
}
