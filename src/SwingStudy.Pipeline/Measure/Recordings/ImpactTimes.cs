using SwingStudy.Domain.Curves;
using SwingStudy.Motion.Events;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Pipeline.Measure.Recordings;

/// <summary>Impact on the time of each recording of a session.</summary>
/// <remarks>
/// In this order: contact that the device saw itself; its sound; contact of another device of the swing on this device's clock; its trigger; for markers,
/// the club head alone. Where a trigger stands against a contact on a known clock, the contact holds. In a recording of hands and club head, the break in
/// the shaft's turn near that moment sets it right.
/// </remarks>
internal sealed class ImpactTimes
{
    private readonly Dictionary<string, Impact> _own = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Device, string Other), ContactClock?> _clocks = [];
    private readonly IReadOnlyList<IReadOnlyList<Recording>> _swings;
    private readonly EventLimits _limits;

    /// <summary>Looks at the recordings of all swings of a session.</summary>
    /// <param name="swings">For each swing, its recordings.</param>
    /// <param name="limits">Thresholds.</param>
    public ImpactTimes(IReadOnlyList<IReadOnlyList<Recording>> swings, EventLimits limits)
    {
        (_swings, _limits) = (swings, limits);
        foreach (var recording in swings.SelectMany(swing => swing))
        {
            if (Seen(recording) is { } seen)
                _own[recording.Capture] = Exact(recording, seen);
        }
    }

    /// <summary>Impact in a recording; null when nothing tells it.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="swing">All recordings of its swing.</param>
    public Impact? Of(Recording recording, IReadOnlyList<Recording> swing) =>
        _own.TryGetValue(recording.Capture, out var own) ? own
        : (FromOthers(recording, swing)
            ?? (double.IsNaN(recording.TriggerS) ? null : new Impact(recording.TriggerS, "trigger of the device", 0.6))
            ?? FromHead(recording)) is { } found ? Exact(recording, found) : null;

    /// <summary>Impact where the shaft's turn breaks near a moment, if it clearly does.</summary>
    private static Impact Exact(Recording recording, Impact near) =>
        recording.Point("club_head", 0) is { } head && (recording.Point("grip", 0) ?? recording.Point("lead_wrist", 0)) is { } hands
        && ContactOfClub.Near(hands, head, near.TimeS) is { } contact
            ? new Impact(contact.TimeS, $"{near.Method}, set to the break in the shaft's turn", Math.Max(near.Confidence, BreakConfidence))
            : near;

    private static Impact? Seen(Recording recording)
    {
        if (!double.IsNaN(recording.ContactS))
            return new Impact(recording.ContactS, "contact marked by the device", 0.95);
        return recording.Channels.TryGetValue(Channels.Sound, out var sound) && ImpactSearch.FromSound(sound.Values, sound.Axis(0)) is { } heard
            ? new Impact(heard.TimeS, heard.Method, heard.Confidence)
            : null;
    }

    private Impact? FromOthers(Recording recording, IReadOnlyList<Recording> swing)
    {
        foreach (var other in swing.Where(other => _own.ContainsKey(other.Capture) && !double.IsNaN(other.FirstSampleMillis)).OrderBy(other => other.Source, StringComparer.Ordinal))
        {
            if (double.IsNaN(recording.FirstSampleMillis) || ClockOf(recording.Device, other.Device) is not { } clock)
                continue;
            var time = (clock.Map(ContactMillis(other)) - recording.FirstSampleMillis) / 1000;
            return new Impact(time, clock.Describe(other.Source), 0.85);
        }

        return null;
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

    private const double ClubGapSeconds = 0.04;
    private const double BreakConfidence = 0.9;
}
