using System.Globalization;
using SwingStudy.Pipeline.Link.Clocks;

namespace SwingStudy.Pipeline.Link;

/// <summary>The links and clocks of one stay.</summary>
internal sealed class StayLinks
{
    private const double LateWeight = 0.5;
    private readonly Stay _stay;
    private readonly LinkSettings _settings;
    private readonly long _originMillis;
    private readonly StayTimeline _timeline;
    private readonly Dictionary<string, string> _skeletonOf;
    private readonly Dictionary<SeenMoment, (PlayerSession Session, string Swing)> _swingOf = [];
    private readonly List<CaptureLink> _links = [];
    private readonly Dictionary<string, List<StruckSwing>> _swings = new(StringComparer.Ordinal);

    private StayLinks(Stay stay, IReadOnlyList<Capture> captures, LinkSettings settings, Func<DeviceRecords, DeviceRecords, ClockDrift?> drifts)
    {
        (_stay, _settings, _originMillis) = (stay, settings, captures.Count > 0 ? captures[0].AtMillis : 0);
        List<string> players = [.. stay.Sessions.Select(session => session.Participant).Distinct()];
        _timeline = StayTimeline.Of(
            [.. captures.GroupBy(capture => (capture.Source, capture.Device)).Select(group => DeviceRecords.Of(
                [.. group], _originMillis, participant => participant is null ? ClockReading.Anybody : players.IndexOf(participant)))],
            settings, drifts);
        _skeletonOf = stay.Sessions.ToDictionary(session => session.Id, session => Skeleton(session, captures), StringComparer.Ordinal);
        AddSwings();
        AddAlone();
    }

    /// <summary>Links of the stay's captures of swings.</summary>
    public IReadOnlyList<CaptureLink> Links => _links;

    /// <summary>The swings of each session, in order of time.</summary>
    public IReadOnlyDictionary<string, List<StruckSwing>> Swings => _swings;

    /// <summary>Links the captures of swings of a stay.</summary>
    /// <param name="stay">The stay.</param>
    /// <param name="captures">Its captures of swings, in order of time.</param>
    /// <param name="settings">Settings.</param>
    /// <param name="drifts">What is known of a device's drift against a reference from elsewhere.</param>
    public static StayLinks Of(Stay stay, IReadOnlyList<Capture> captures, LinkSettings settings, Func<DeviceRecords, DeviceRecords, ClockDrift?> drifts) =>
        new(stay, captures, settings, drifts);

    /// <summary>Devices with the reference against which their clocks were modelled, and the drifts that were fitted.</summary>
    public IEnumerable<(DeviceRecords Device, DeviceRecords Reference, IReadOnlyList<ClockDrift> Drifts)> Drifts() =>
        _timeline.Devices.Skip(1).Select(device => (device.Records, _timeline.Devices[0].Records,
            (IReadOnlyList<ClockDrift>)[.. (device.Alignment?.Stretches ?? []).Where(stretch => stretch.HasDrift).Select(stretch => new ClockDrift(stretch.Line.Drift, stretch.DriftError))]));

    /// <summary>The clocks of the stay's devices, told for each of its sessions; counts are those of the stay.</summary>
    public IEnumerable<ClockRow> Clocks() => _stay.Sessions.SelectMany(session => _timeline.Devices.SelectMany(device => StayClocks.Of(session, device, _timeline, _originMillis, _swingOf.ContainsKey)));

    /// <summary>The source that gives a session its swings: the first of the preferred ones with records that are the player's or nobody's.</summary>
    private string Skeleton(PlayerSession session, IReadOnlyList<Capture> captures) => captures
        .Where(capture => capture.Participant is null || capture.Participant == session.Participant).Select(capture => capture.Source)
        .OrderBy(_settings.Rank).ThenBy(source => source, StringComparer.Ordinal).FirstOrDefault() ?? "";

    private void AddSwings()
    {
        var found = new List<(PlayerSession Session, SeenMoment Moment, long Struck)>();
        foreach (var moment in _timeline.Moments)
        {
            if (SessionOf(moment) is { } session && IsSwing(moment, session))
                found.Add((session, moment, StruckMillis(moment, session)));
            else
                AddUnlinked(moment);
        }

        // A device that gives the swings but fits no clock gives them by its own.
        foreach (var (session, record) in OwnClock())
            found.Add((session, new SeenMoment(new SeenRecord(record.Device, record.Record, record.Record.Reading, ClockLine.Same, false, 1)), Millis(record.Record.Reading.Seconds)));
        foreach (var own in found.GroupBy(swing => swing.Session))
        {
            var swings = _swings[own.Key.Id] = [];
            foreach (var (session, moment, struck) in own.OrderBy(swing => swing.Struck).ThenBy(swing => swing.Moment.Definer.Record.Capture.OriginalRow)
                .ThenBy(swing => swing.Moment.Definer.Record.Capture.Id, StringComparer.Ordinal))
            {
                var swing = new StruckSwing(string.Create(CultureInfo.InvariantCulture, $"{session.Id}-{swings.Count + 1:00}"), session, struck);
                swings.Add(swing);
                _swingOf[moment] = (session, swing.Id);
                AddLinked(moment, swing);
            }
        }
    }

    /// <summary>The session of a moment: of the player whom a record names, or the only one; null where players take turns and no record tells.</summary>
    private PlayerSession? SessionOf(SeenMoment moment)
    {
        var named = moment.Records.Select(record => record.Record.Capture.Participant).FirstOrDefault(participant => participant is not null);
        var at = moment.Definer.Record.Capture.AtMillis;
        var own = _stay.Sessions.Where(session => named is null || session.Participant == named).ToList();
        return own is [var only] ? only : named is null ? null : own.Find(session => session.Covers(at));
    }

    private bool IsSwing(SeenMoment moment, PlayerSession session) =>
        IsOnClock(session) && (moment.Records.Count > 1 || moment.Records[0].Device.Source == _skeletonOf[session.Id]);

    /// <summary>Whether the device that gives a session its swings shares the clock with the others.</summary>
    private bool IsOnClock(PlayerSession session) =>
        _timeline.Devices.Where(device => device.Records.Source == _skeletonOf[session.Id]).All(device => device.IsAligned);

    private IEnumerable<(PlayerSession Session, (DeviceRecords Device, DeviceRecord Record) Record)> OwnClock()
    {
        foreach (var device in _timeline.Devices)
        {
            foreach (var record in device.Records.Records)
            {
                var named = record.Capture.Participant;
                var sessions = _stay.Sessions.Where(session =>
                    (named is null || session.Participant == named) && session.Covers(record.Capture.AtMillis) && _skeletonOf[session.Id] == device.Records.Source && !IsOnClock(session)).ToList();
                if (sessions is [var session])
                    yield return (session, (device.Records, record));
            }
        }
    }

    private void AddLinked(SeenMoment moment, StruckSwing swing)
    {
        var skeleton = moment.Records.FirstOrDefault(record => record.Device.Source == _skeletonOf[swing.Session.Id]);
        foreach (var record in moment.Records)
        {
            var isSkeleton = record == skeleton;
            var capture = record.Record.Capture;
            if (!swing.Session.Covers(capture.AtMillis))
            {
                _links.Add(new CaptureLink(capture, LinkMethods.NoSession));
                continue;
            }

            _links.Add(new CaptureLink(capture, isSkeleton ? LinkMethods.Skeleton : LinkMethods.Time)
            {
                Swing = swing.Id,
                Participant = swing.Session.Participant,
                Session = swing.Session.Id,
                StruckMillis = swing.StruckMillis,
                ResidualSeconds = moment.Records.Count > 1 ? record.After(moment) : null,
                Confidence = isSkeleton ? 1 : Confidence(record, moment, skeleton),
            });
        }
    }

    /// <summary>As sure as the clocks of both devices; less for an odd trigger, the more the further off it is.</summary>
    private double Confidence(SeenRecord record, SeenMoment moment, SeenRecord? skeleton)
    {
        var clocks = Math.Min(record.Confidence, skeleton?.Confidence ?? 1);
        return record.IsLate ? clocks * (1 - (LateWeight * Math.Min(1, Math.Abs(record.After(moment)) / _settings.Limits.LateSeconds))) : clocks;
    }

    /// <summary>Records of a moment that is no swing, or of which nobody knows whose.</summary>
    private void AddUnlinked(SeenMoment moment)
    {
        var session = SessionOf(moment);
        foreach (var record in moment.Records)
        {
            // What gives the session its swings by its own clock is added there.
            if (session is not null && !IsOnClock(session) && record.Device.Source == _skeletonOf[session.Id])
                continue;
            var isUnclear = session is null || !IsOnClock(session);
            var method = session is null && moment.Records.Count > 1 ? LinkMethods.UnknownPlayer : isUnclear && session is not null ? LinkMethods.LowConfidence : LinkMethods.MissedOrFalse;
            _links.Add(new CaptureLink(record.Record.Capture, method)
            {
                Session = record.Record.Capture.Participant is null ? null : session?.Id,
                ResidualSeconds = moment.Records.Count > 1 ? record.After(moment) : null,
            });
        }
    }

    /// <summary>Records of devices without a clock, and records that lie on no stretch of one.</summary>
    private void AddAlone()
    {
        var placed = _links.Select(link => link.Capture).ToHashSet();
        foreach (var device in _timeline.Devices)
        {
            foreach (var capture in device.Records.Records.Select(record => record.Capture).Where(capture => !placed.Contains(capture)))
            {
                var hasCandidate = device.Candidates.TryGetValue(capture, out var candidate);
                _links.Add(new CaptureLink(capture, hasCandidate ? LinkMethods.LowConfidence : LinkMethods.MissedOrFalse)
                {
                    Session = _stay.Sessions.FirstOrDefault(session => session.Participant == capture.Participant && session.Covers(capture.AtMillis))?.Id,
                    ResidualSeconds = hasCandidate ? candidate.Residual : null,
                    Confidence = hasCandidate ? device.Alignment!.Doubtful!.Confidence : null,
                    Candidate = hasCandidate ? candidate.With.Id : null,
                });
            }
        }
    }

    /// <summary>Impact on the clock of the device that gives the session its swings; on the reference clock where that device has none.</summary>
    private long StruckMillis(SeenMoment moment, PlayerSession session)
    {
        if (moment.Records.FirstOrDefault(record => record.Device.Source == _skeletonOf[session.Id] && !record.Record.IsGuess) is { } own)
        {
            var reading = own.Record.Reading;
            return reading.Width > 0 && moment.Reading.Width < reading.Width
                ? Millis(Math.Clamp(own.Line.Unmap(moment.Reading.Middle), reading.Seconds, reading.Seconds + reading.Width))
                : own.Record.Capture.AtMillis;
        }

        var device = _timeline.Devices.FirstOrDefault(device => device.Records.Source == _skeletonOf[session.Id]);
        return Millis(device?.LineFor(moment.Reading.Middle) is { } line ? line.Line.Unmap(moment.Reading.Middle) : moment.Reading.Middle);
    }

    private long Millis(double seconds) => _originMillis + (long)Math.Round(seconds * 1000);
}
