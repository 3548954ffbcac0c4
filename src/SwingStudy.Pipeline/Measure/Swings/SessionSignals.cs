using SwingStudy.Domain.Protocols;
using SwingStudy.Motion.Events;
using SwingStudy.Motion.Forces;
using SwingStudy.Pipeline.Measure.Recordings;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>The signals of all swings of a session.</summary>
/// <param name="Swings">One for each swing, in order.</param>
/// <param name="HasMotion">Whether the session holds recordings of marks at all.</param>
/// <param name="HasForces">Whether it holds recordings of plates at all.</param>
internal sealed record SessionSignals(IReadOnlyList<SwingSignals> Swings, bool HasMotion, bool HasForces)
{
    /// <summary>Puts them together.</summary>
    /// <param name="swings">The swings with the captures that belong to each.</param>
    /// <param name="all">All recordings of the session by capture, zeros and quiet standing included.</param>
    /// <param name="stay">Clocks of its devices as linking found them.</param>
    /// <param name="declaredSide">+1 right-handed, −1 left-handed, as the registry says; null when it does not.</param>
    /// <param name="settings">Settings.</param>
    public static SessionSignals Of(
        IReadOnlyList<(string Id, IReadOnlyList<string> Captures)> swings, IReadOnlyDictionary<string, Recording> all, ILookup<string, StayClock> stay, int? declaredSide,
        MeasureSettings settings)
    {
        var limits = LimitsOf(settings.Signals);
        List<IReadOnlyList<Recording>> recordings = [.. swings.Select(swing => (IReadOnlyList<Recording>)[.. swing.Captures.Where(all.ContainsKey).Select(id => all[id])])];
        var impacts = new ImpactTimes(recordings, stay, limits);
        List<MarkerSwing?> motions = [.. recordings.Select(swing => Marker(swing, impacts, settings.Signals))];
        List<EventSet> events = [.. motions.Select(motion => motion?.Events(limits) ?? EventSet.None)];
        List<SwingPlates?> plates = [.. recordings.Select(swing => SwingPlates.Of(swing, recording => impacts.Of(recording, swing)))];
        var clocks = new PlateClocks(plates);
        List<string?> faults = [.. plates.Select(swing => swing is null ? null : clocks.Fault(swing))];
        List<(SwingPlates, double)> still = [.. Enumerable.Range(0, swings.Count).Where(i => plates[i] is not null && faults[i] is null).Select(i => (plates[i]!, StillUntil(plates[i]!, events[i])))];
        // The player's side is one for the session: as declared, else as most of the swings with marks show it.
        var side = declaredSide ?? Most(motions.Select(motion => motion?.Side));
        var session = new SessionForces(all.Values, still, clocks, settings.Plates, side, settings.Signals);
        return new SessionSignals(
        [
            .. swings.Select((swing, i) =>
            {
                var forces = plates[i] is { } own && faults[i] is null ? ForceSwing.Of(own, session, settings.Signals) : null;
                return new SwingSignals(swing.Id, motions[i], forces, session, WithForces(events[i], forces), side, settings.Signals) { ForcesFault = faults[i] };
            }),
        ], recordings.Any(swing => swing.Any(recording => recording.HasClub)), recordings.Any(swing => swing.Any(recording => recording.HasForces)));
    }

    /// <summary>Thresholds of the rules for events as the protocol sets them.</summary>
    public static EventLimits LimitsOf(SignalPlan plan) => new() { StillMps = plan.StillMps, MovingMps = plan.MovingMps, TopShare = plan.TopShare };

    private static MarkerSwing? Marker(IReadOnlyList<Recording> swing, ImpactTimes impacts, SignalPlan plan) =>
        swing.FirstOrDefault(recording => recording.HasClub) is { } marks && impacts.Of(marks, swing) is { } impact ? new MarkerSwing(marks, impact, plan) : null;

    /// <summary>Until when the player stands still, from impact: until the start, or without one until well before any backswing could begin.</summary>
    private static double StillUntil(SwingPlates plates, EventSet events)
    {
        const double LongBefore = 1.2;
        const double LeastS = 0.1;
        var start = events.TimeOf(EventNames.Start);
        return Math.Max(plates.SharedFromS + LeastS, double.IsNaN(start) ? -LongBefore : start);
    }

    /// <summary>Events that forces alone give: impact and start where there are no marks, unweighting always.</summary>
    private static EventSet WithForces(EventSet events, ForceSwing? forces)
    {
        if (forces is null)
            return events;
        List<SwingEvent> found = [.. events.Found];
        if (events.Found.Count == 0)
            found.Add(new SwingEvent(EventNames.Impact, 0, forces.Impact.Method, forces.Impact.Confidence));
        if (forces.Total is not { } total)
            return events with { Found = found };
        if (double.IsNaN(events.TimeOf(EventNames.Top)) && ForceEvents.LeastVertical(total.ForceY, forces.Axis, 0) is { } unweighting)
            found.Add(unweighting);
        if (double.IsNaN(events.TimeOf(EventNames.Start))
            && QuietStanding.Stillest(total.ForceY, forces.Axis, 0.2, forces.Axis.FirstTimeS, -1.2) is { } still
            && ForceEvents.Start(total, forces.Axis, still, 0) is { } start)
            found.Add(start);
        return events with { Found = found, Failed = [.. events.Failed.Where(failed => found.All(e => e.Name != failed.Name))] };
    }

    private static int? Most(IEnumerable<int?> sides)
    {
        var sum = sides.Sum(side => side ?? 0);
        return sum == 0 ? null : Math.Sign(sum);
    }
}
