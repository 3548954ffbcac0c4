using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Events;

/// <summary>Events from a point of the club, with the pelvis's turn where it is known.</summary>
/// <remarks>
/// The head stands near the ball's place before the swing and passes it at impact: that tells the still time before the swing from a rest at the top.
/// Start: back from impact to the last moment at which the head was near that place and slower than <see cref="EventLimits.StillMps"/>. Top: least
/// head speed between start and impact after <see cref="EventLimits.TopShare"/> of the way, refined to where the velocity along the path changes
/// sign. Speeds come from positions low-passed without lag. Common practice, no source.
/// </remarks>
public sealed class MarkerEvents
{
    private const double ReversalS = 0.025;

    private readonly Trajectory _club;
    private readonly TimeAxis _axis;
    private readonly EventLimits _limits;
    private readonly string _point;
    private readonly double[] _slow;
    private readonly List<SwingEvent> _found = [];
    private readonly List<FailedEvent> _failed = [];

    private MarkerEvents(Trajectory club, string point, EventLimits limits)
    {
        (_club, _axis, _limits, _point) = (club, club.Axis, limits, point);
        _slow = Smoothed(limits.SlowCutoffHz).Velocity().Lengths();
    }

    /// <summary>Finds address, start, top, transition and finish.</summary>
    /// <param name="club">The club head, or the grip where the head was not followed; gaps of tolerable length filled.</param>
    /// <param name="point">What the point is, for the method: <c>club head</c> or <c>grip</c>.</param>
    /// <param name="pelvisTurnDeg">Turn of the pelvis, + away from the target, smoothed; null when unknown.</param>
    /// <param name="impactS">Moment of impact on the same time axis.</param>
    /// <param name="limits">Thresholds.</param>
    public static EventSet Find(Trajectory club, string point, double[]? pelvisTurnDeg, double impactS, EventLimits limits)
    {
        var events = new MarkerEvents(club, point, limits);
        events.FindStart(impactS);
        events.FindTop(impactS);
        events.FindTransition(pelvisTurnDeg, impactS);
        events.FindFinish(impactS);
        return new EventSet(events._found, events._failed);
    }

    private void FindStart(double impactS)
    {
        var place = _club.Mean(impactS - (1.5 / _axis.SampleRateHz), impactS + (0.5 / _axis.SampleRateHz));
        var earliest = _axis.From(impactS - _limits.LongestSwingS);
        var start = -1;
        for (var i = _axis.To(impactS - 0.2); i >= earliest; i--)
        {
            if (_slow[i] < _limits.StillMps && (_club[i] - place).Length < _limits.NearBallM)
            {
                start = i;
                break;
            }
        }

        if (start < 0 || Peak.Highest(_slow, start, _axis.To(impactS)) is not { } fastest || fastest.Sample < _limits.MovingMps)
        {
            _failed.Add(new FailedEvent(EventNames.Start, $"the {_point} is nowhere still near the ball's place before the swing"));
            _failed.Add(new FailedEvent(EventNames.Address, "there is no start"));
            return;
        }

        var still = start;
        while (still > 0 && _slow[still - 1] < _limits.StillMps && (start - still) / _axis.SampleRateHz < _limits.StillS)
            still--;
        // A short still time, for instance where the recording begins late, makes the start less certain.
        var share = Math.Min(1, (start - still + 1) / (_limits.StillS * _axis.SampleRateHz));
        var time = Crossing(_slow, start, _limits.StillMps);
        _found.Add(new SwingEvent(EventNames.Address, Math.Min(time, _axis.TimeOf(start)), $"{_point} below {Text(_limits.StillMps)} m/s before start", 0.5 + (0.4 * share)));
        _found.Add(new SwingEvent(EventNames.Start, time, $"{_point} last below {Text(_limits.StillMps)} m/s near the ball", 0.5 + (0.4 * share)));
    }

    private void FindTop(double impactS)
    {
        if (_found.Find(e => e.Name == EventNames.Start) is not { } start)
        {
            _failed.Add(new FailedEvent(EventNames.Top, "there is no start"));
            return;
        }

        var path = Smoothed(_limits.TurnCutoffHz);
        var velocity = path.Velocity();
        var origin = path.At(start.TimeS);
        double[] away = [.. Enumerable.Range(0, path.Count).Select(i => (path[i] - origin).Length)];
        var (first, last) = (_axis.From(start.TimeS), _axis.To(impactS));
        if (Peak.Highest(away, first, last) is not { } farthest)
        {
            _failed.Add(new FailedEvent(EventNames.Top, $"the {_point} is missing in the swing"));
            return;
        }

        var enough = _limits.TopShare * farthest.Sample;
        while (first < last && !(away[first] >= enough))
            first++;
        while (last > first && !(away[last] >= enough))
            last--;
        var speeds = velocity.Lengths();
        if (Peak.Lowest(speeds, first, last) is not { } slowest || slowest.Index == first || slowest.Index == last)
        {
            _failed.Add(new FailedEvent(EventNames.Top, $"the {_point} does not slow down and reverse"));
            return;
        }

        var backswing = Peak.Highest(speeds, _axis.From(start.TimeS), slowest.Index)!.Value.Sample;
        var confidence = Math.Clamp(1 - (slowest.Sample / backswing), 0.1, 0.95);
        var time = Reversal(velocity, slowest.Index) is { } reversal ? _axis.TimeOf(reversal) : _axis.TimeOf(slowest.Position);
        _found.Add(new SwingEvent(EventNames.Top, time, $"{_point} reverses along its path", confidence));
    }

    /// <summary>Where the velocity along the path changes sign near the slowest sample: along the change of velocity there, straight through the samples.</summary>
    private double? Reversal(Trajectory velocity, int slowest)
    {
        var reach = Math.Max(2, (int)Math.Round(ReversalS * _axis.SampleRateHz));
        var (from, to) = (slowest - reach, slowest + reach);
        if (from < 0 || to >= velocity.Count)
            return null;
        var along = (velocity[to] - velocity[from]).Direction;
        double[] positions = [.. Enumerable.Range(from, to - from + 1).Select(i => (double)i)];
        double[] speeds = [.. Enumerable.Range(from, to - from + 1).Select(i => velocity[i].Dot(along))];
        if (speeds.Any(double.IsNaN) || !(speeds[0] < 0 && speeds[^1] > 0))
            return null;
        var fit = PolynomialFit.Of(positions, speeds, Math.Min(3, speeds.Length - 1));
        var (low, high) = ((double)from, (double)to);
        for (var round = 0; round < 50; round++)
        {
            var middle = (low + high) / 2;
            (low, high) = fit.At(middle) < 0 ? (middle, high) : (low, middle);
        }

        return Math.Abs(low - slowest) <= reach ? low : null;
    }

    private void FindTransition(double[]? turn, double impactS)
    {
        if (turn is null || _found.Find(e => e.Name == EventNames.Start) is not { } start)
        {
            _failed.Add(new FailedEvent(EventNames.Transition, turn is null ? "the pelvis was not followed" : "there is no start"));
            return;
        }

        var peak = Span.Highest(turn, _axis, start.TimeS, impactS);
        if (peak is not { } most || most.Index <= _axis.From(start.TimeS) || most.Index >= _axis.To(impactS))
            _failed.Add(new FailedEvent(EventNames.Transition, "the pelvis does not turn back before impact"));
        else
            _found.Add(new SwingEvent(EventNames.Transition, _axis.TimeOf(most.Position), "pelvis turned farthest from the target", 0.8));
    }

    private void FindFinish(double impactS)
    {
        var needed = Math.Max(1, (int)Math.Round(_limits.FinishS * _axis.SampleRateHz));
        var run = 0;
        for (var i = _axis.From(impactS + 0.1); i < _axis.Count; i++)
        {
            run = _slow[i] < _limits.FinishMps ? run + 1 : 0;
            if (run < needed)
                continue;
            _found.Add(new SwingEvent(EventNames.Finish, _axis.TimeOf(i - needed + 1), $"{_point} below {Text(_limits.FinishMps)} m/s for {Text(_limits.FinishS)} s", 0.8));
            return;
        }

        _failed.Add(new FailedEvent(EventNames.Finish, $"the recording ends before the {_point} rests"));
    }

    private Trajectory Smoothed(double cutoffHz) => _club.Filtered(new LowPass(cutoffHz));

    /// <summary>Time after a sample at which a rising speed reaches a level, along a straight line; the sample's own where it does not.</summary>
    private double Crossing(double[] speeds, int at, double level)
    {
        var next = at + 1 < speeds.Length ? speeds[at + 1] : double.NaN;
        return _axis.TimeOf(next > level && speeds[at] < level ? at + ((level - speeds[at]) / (next - speeds[at])) : at);
    }

    private static string Text(double value) => value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);
}
