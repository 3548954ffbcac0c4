using System.Globalization;
using SwingStudy.Domain.Curves;
using SwingStudy.Motion.Events;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Pipeline.Measure.Recordings;

/// <summary>Impact on the time of each recording of a session.</summary>
/// <remarks>
/// Contact that the device saw itself, or its sound, stands first. In recordings of hands and club head, it is weighed with the break in the shaft's turn near it
/// and with the place of the ball that the session's swings share (<see cref="SessionContacts"/>); a swing without contact of its own has it where the head
/// passes that place. Then, in this order: contact of another device of the swing on this device's clock; its trigger; for markers, the club head alone. Where
/// a trigger stands against a contact on a known clock, the contact holds.
/// </remarks>
internal sealed class ImpactTimes
{
    private const double ClubGapSeconds = 0.04;
    private const double BreakConfidence = 0.9;
    private const double PassageConfidence = 0.8;
    private const double MostErrors = 4;

    private readonly Dictionary<string, Impact> _own = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Device, string Other), ContactClock?> _clocks = [];
    private readonly IReadOnlyList<IReadOnlyList<Recording>> _swings;
    private readonly ILookup<string, StayClock> _stay;
    private readonly HashSet<string> _contacting;
    private readonly EventLimits _limits;

    /// <summary>Looks at the recordings of all swings of a session.</summary>
    /// <param name="swings">For each swing, its recordings.</param>
    /// <param name="clocks">Clocks of the session's devices.</param>
    /// <param name="limits">Thresholds.</param>
    public ImpactTimes(IReadOnlyList<IReadOnlyList<Recording>> swings, ILookup<string, StayClock> clocks, EventLimits limits)
    {
        (_swings, _stay, _limits) = (swings, clocks, limits);
        List<Recording> all = [.. swings.SelectMany(swing => swing)];
        _contacting = [.. all.GroupBy(recording => recording.Device).Where(own => 2 * own.Count(recording => !double.IsNaN(recording.ContactS)) > own.Count()).Select(own => own.Key)];
        foreach (var recording in all)
        {
            if (Seen(recording) is { } seen)
                _own[recording.Capture] = seen;
        }

        foreach (var device in all.Where(recording => HandsOf(recording) is not null && recording.Point("club_head", 0) is not null).GroupBy(recording => recording.Device))
            Refine([.. device]);
    }

    /// <summary>Impact in a recording; null when nothing tells it.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="swing">All recordings of its swing.</param>
    public Impact? Of(Recording recording, IReadOnlyList<Recording> swing) =>
        _own.TryGetValue(recording.Capture, out var own) ? own : FromOthers(recording, swing) ?? FromTrigger(recording) ?? FromHead(recording);

    /// <summary>Contacts of the recordings of one device that follow hands and head, each by the others.</summary>
    private void Refine(IReadOnlyList<Recording> recordings)
    {
        var frames = MarkedOnFrames(recordings);
        Impact?[] near = [.. recordings.Select(recording => _own.GetValueOrDefault(recording.Capture) ?? FromTrigger(recording) ?? FromHead(recording))];
        var contacts = SessionContacts.Of([.. recordings.Select((recording, i) => new ClubSwing(
            HandsOf(recording)!, recording.Point("club_head", 0)!,
            _own.TryGetValue(recording.Capture, out var seen) ? seen.TimeS : double.NaN, FloorOf(recording, frames), near[i]?.TimeS ?? double.NaN))], _limits);
        for (var i = 0; i < recordings.Count; i++)
        {
            if (contacts[i] is { } contact)
                _own[recordings[i].Capture] = Told(contact, near[i]);
        }
    }

    private static Impact Told(ContactOfSwing contact, Impact? near)
    {
        var place = string.Create(CultureInfo.InvariantCulture, $"the place of the ball in {contact.PlaceSwings} swings, standard error {1000 * contact.ScatterS:0.00} ms");
        return (contact.HasMark, contact.HasBreak, contact.PlaceSwings > 0) switch
        {
            (true, false, false) => near!,
            (false, true, false) => new Impact(contact.TimeS, near is null ? "break in the shaft's turn" : $"{near.Method}, set to the break in the shaft's turn", Math.Max(near?.Confidence ?? 0, BreakConfidence)),
            (false, true, true) => new Impact(contact.TimeS, $"break in the shaft's turn, weighed with {place}", BreakConfidence),
            (true, true, _) => new Impact(contact.TimeS, $"{near!.Method} and break in the shaft's turn, weighed with {place}", Math.Max(near.Confidence, BreakConfidence)),
            (true, false, true) => new Impact(contact.TimeS, $"{near!.Method}, weighed with {place}", near.Confidence),
            _ => new Impact(contact.TimeS, $"club head passes {place}", PassageConfidence),
        };
    }

    private static Trajectory? HandsOf(Recording recording) => recording.Point("grip", 0) ?? recording.Point("lead_wrist", 0);

    /// <summary>Whether contact was marked to whole frames in all of several recordings, so that a mark is as uncertain as a frame is wide.</summary>
    private static bool MarkedOnFrames(IReadOnlyList<Recording> recordings)
    {
        double[] places = [.. recordings.Where(recording => !double.IsNaN(recording.ContactS)).Select(recording => recording.ContactS * recording.Point("club_head", 0)!.Axis.SampleRateHz)];
        return places.Length >= BallPlace.LeastSwings && places.All(place => Math.Abs(place - Math.Round(place)) < FramePart);
    }

    /// <summary>Standard error that a mark has at least: that of an even spread over a frame, or over a sample of sound.</summary>
    private static double FloorOf(Recording recording, bool onFrames)
    {
        var rate = double.IsNaN(recording.ContactS)
            ? recording.Channels.TryGetValue(Channels.Sound, out var sound) ? sound.SampleRateHz : double.PositiveInfinity
            : onFrames ? recording.Point("club_head", 0)!.Axis.SampleRateHz : double.PositiveInfinity;
        return 1 / rate / Math.Sqrt(12);
    }

    private const double FramePart = 0.02;

    private static Impact? Seen(Recording recording)
    {
        if (!double.IsNaN(recording.ContactS))
            return new Impact(recording.ContactS, "contact marked by the device", 0.95);
        return recording.Channels.TryGetValue(Channels.Sound, out var sound) && ImpactSearch.FromSound(sound.Values, sound.Axis(0)) is { } heard
            ? new Impact(heard.TimeS, heard.Method, heard.Confidence)
            : null;
    }

    private static Impact? FromTrigger(Recording recording) => double.IsNaN(recording.TriggerS) ? null : new Impact(recording.TriggerS, "trigger of the device", 0.6);

    private Impact? FromOthers(Recording recording, IReadOnlyList<Recording> swing)
    {
        foreach (var other in swing.Where(other => _own.ContainsKey(other.Capture) && !double.IsNaN(other.FirstSampleMillis)).OrderBy(other => other.Source, StringComparer.Ordinal))
        {
            if (!double.IsNaN(recording.FirstSampleMillis) && OnClockOf(recording.Device, other) is { } found)
                return new Impact((found.Millis - recording.FirstSampleMillis) / 1000, found.Method, 0.85);
        }

        return null;
    }

    /// <summary>Contact of a recording on another device's clock: by the clocks of the stay, unless the session's own triggers speak against them, else by those triggers.</summary>
    private (double Millis, string Method)? OnClockOf(string device, Recording other)
    {
        var own = ClockOf(device, other.Device);
        // The stay's clocks rest on contacts only where the device tells contact itself; else on times of recordings.
        if (_contacting.Contains(other.Device) && StayClock.Map(_stay, device, other.Device, ContactMillis(other)) is { } known
            && (own is null || (StayClock.Map(_stay, device, other.Device, own.MiddleMillis) is { } middle
                && Math.Abs(middle.Millis - own.Map(own.MiddleMillis)) <= MostErrors * Math.Max(1, own.ErrorMillis))))
            return (known.Millis, known.Clock.Describe(other.Source));
        return own is null ? null : (own.Map(ContactMillis(other)), own.Describe(other.Source));
    }

    private ContactClock? ClockOf(string device, string other)
    {
        if (_clocks.TryGetValue((device, other), out var known))
            return known;
        var pairs = new List<(double, double)>();
        foreach (var swing in _swings)
        {
            var own = swing.FirstOrDefault(r => r.Device == device && !double.IsNaN(r.TriggerS) && !double.IsNaN(r.FirstSampleMillis));
            var contact = swing.FirstOrDefault(r => r.Device == other && _own.ContainsKey(r.Capture) && !double.IsNaN(r.FirstSampleMillis));
            if (own is not null && contact is not null)
                pairs.Add((ContactMillis(contact), own.FirstSampleMillis + (1000 * own.TriggerS)));
        }

        return _clocks[(device, other)] = ContactClock.Of(pairs);
    }

    private double ContactMillis(Recording recording) => recording.FirstSampleMillis + (1000 * _own[recording.Capture].TimeS);

    private Impact? FromHead(Recording recording)
    {
        if (recording.Point("club_head", 0) is not { } head)
            return null;
        var limit = (int)Math.Round(ClubGapSeconds * head.Axis.SampleRateHz);
        return ImpactSearch.FromHead(head.Map(values => GapFill.Of(values, limit).Values), _limits) is { } found
            ? new Impact(found.TimeS, found.Method, found.Confidence)
            : null;
    }
}
