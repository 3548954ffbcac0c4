using SwingStudy.Domain.Protocols;
using SwingStudy.Motion.Events;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Kinematics;
using SwingStudy.Motion.Signals;
using SwingStudy.Pipeline.Measure.Recordings;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>The marks of one swing, gap-filled and smoothed, with impact as time zero.</summary>
/// <remarks>
/// Marks on the body are low-passed without lag. Club and hands are fitted by a moving polynomial that sees no sample after impact; at impact itself the
/// head is told by its turn about the hands. Gaps are filled on either side of impact alone.
/// </remarks>
internal sealed class MarkerSwing
{
    /// <summary>Degree of the polynomial for hands: their path bends slowly.</summary>
    public const int HandDegree = 3;

    /// <summary>Degree of the polynomial for the club, whose direction turns by two radians within the window before impact.</summary>
    public const int ClubDegree = 5;

    /// <summary>Half the time over which the peak of grip speed is laid.</summary>
    private const double GripPeakS = 0.05;

    private static readonly string[] Hands = ["grip", "lead_wrist", "lead_elbow", "trail_wrist", "trail_elbow"];

    private readonly Recording _recording;
    private readonly SignalPlan _plan;
    private readonly Dictionary<string, Trajectory?> _raw = new(StringComparer.Ordinal);
    private readonly Dictionary<string, MovingFit?> _fits = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Trajectory?> _bodies = new(StringComparer.Ordinal);
    private (Vector3D Place, Vector3D Velocity) _head;
    private bool _hasHead;
    private ClubSwing? _club;

    public MarkerSwing(Recording recording, Impact impact, SignalPlan plan)
    {
        (_recording, Impact, _plan) = (recording, impact, plan);
        Axis = recording.Channels.First(channel => recording.HasClub ? channel.Key is "club_head_y" or "grip_y" : true).Value.Axis(impact.TimeS);
        Pelvis = Body("pelvis_front_lead") is { } lead && Body("pelvis_front_trail") is { } trail && Body("pelvis_back") is { } back
            ? Trajectory.Middle(lead, trail, back)
            : null;
        PelvisAxes = Pelvis is null ? null : SegmentAxes.Pelvis(Body("pelvis_front_lead")!, Body("pelvis_front_trail")!, Body("pelvis_back")!);
        TrunkAxes = Pelvis is not null && Body("lead_shoulder") is { } leadShoulder && Body("trail_shoulder") is { } trailShoulder
            ? SegmentAxes.Trunk(leadShoulder, trailShoulder, Pelvis)
            : null;
        Side = FindSide();
    }

    /// <summary>Source of the marks.</summary>
    public string Source => _recording.Source;

    /// <summary>Where impact came from.</summary>
    public Impact Impact { get; }

    /// <summary>Times of the samples.</summary>
    public TimeAxis Axis { get; }

    /// <summary>+1 when the ball lies to the right of the player facing the target (right-handed), −1 left-handed; null when the marks do not tell.</summary>
    public int? Side { get; }

    /// <summary>Middle of the three marks of the pelvis; null when one was not followed.</summary>
    public Trajectory? Pelvis { get; }

    /// <summary>Axes of the pelvis.</summary>
    public SegmentAxes? PelvisAxes { get; }

    /// <summary>Axes of the trunk.</summary>
    public SegmentAxes? TrunkAxes { get; }

    /// <summary>A mark as it was seen, its gaps left open; null when it was not followed.</summary>
    public Trajectory? Seen(string landmark) => _recording.Point(landmark, Impact.TimeS);

    /// <summary>A mark with its gaps filled; null when it was not followed.</summary>
    public Trajectory? Raw(string landmark)
    {
        if (!_raw.TryGetValue(landmark, out var known))
            _raw[landmark] = known = Seen(landmark)?.Map(values => Filled(values, landmark));
        return known;
    }

    /// <summary>A mark of club or hands up to impact; null when it was not followed.</summary>
    public MovingFit? Fit(string landmark)
    {
        if (!_fits.TryGetValue(landmark, out var known))
        {
            var isClub = landmark is "club_head" or "shaft";
            _fits[landmark] = known = Raw(landmark) is { } raw
                ? MovingFit.Before(raw, 0, isClub ? _plan.ClubWindowS : _plan.HandWindowS, isClub ? ClubDegree : HandDegree)
                : null;
        }

        return known;
    }

    /// <summary>The club head at impact: from its turn about the hands where they were seen, else from its own places; missing when neither reaches impact.</summary>
    public (Vector3D Place, Vector3D Velocity) HeadAtImpact
    {
        get
        {
            if (!_hasHead)
            {
                var own = Fit("club_head");
                // What fills a gap is no measurement: it would count for as much as samples do.
                var turned = Seen("club_head") is { } head && (Seen("grip") ?? Seen("lead_wrist")) is { } hands ? ClubAtImpact.Before(hands, head, 0) : null;
                _head = turned is not null ? (turned.Place, turned.Velocity) : (own?.AtImpact ?? Vector3D.Missing, own?.VelocityAtImpact ?? Vector3D.Missing);
                _hasHead = true;
            }

            return _head;
        }
    }

    /// <summary>How fast the club goes and turns; null when its head was not followed.</summary>
    public ClubSwing? Club => _club ??= ClubSwing.Of(this);

    /// <summary>A mark of the body, low-passed; null when it was not followed.</summary>
    public Trajectory? Body(string landmark)
    {
        if (!_bodies.TryGetValue(landmark, out var known))
        {
            _bodies[landmark] = known = Raw(landmark)?.Filtered(new LowPass(_plan.BodyCutoffHz));
        }

        return known;
    }

    /// <summary>Turn of the pelvis about the vertical against a span, degrees, + away from the target; null without marks or known side.</summary>
    public double[]? PelvisTurn(double fromS, double toS) => Away(PelvisAxes, fromS, toS);

    /// <summary>The same for the trunk.</summary>
    public double[]? TrunkTurn(double fromS, double toS) => Away(TrunkAxes, fromS, toS);

    /// <summary>Events of the swing.</summary>
    public EventSet Events(EventLimits limits)
    {
        // The way back from impact begins at impact: a head that was lost there cannot tell, the grip can.
        var isHeadSeen = Raw("club_head") is { } head && !head.Mean(-1.5 / Axis.SampleRateHz, 0.5 / Axis.SampleRateHz).IsMissing;
        var (point, name) = isHeadSeen ? (Raw("club_head"), "club head") : (Raw("grip"), "grip");
        if (point is null)
            return EventSet.None;
        // Any turn serves to find its reversal; the first samples of the recording stand for address.
        var turn = PelvisTurn(Axis.FirstTimeS, Axis.FirstTimeS + 0.1);
        var found = MarkerEvents.Find(point, name, turn, 0, limits);
        List<SwingEvent> events = [.. found.Found, new SwingEvent(EventNames.Impact, 0, Impact.Method, Impact.Confidence)];
        List<FailedEvent> failed = [.. found.Failed];
        var top = found.TimeOf(EventNames.Top);
        if (Fit("grip") is { } grip && !double.IsNaN(top) && BroadPeak.Highest(grip.Velocity.Lengths(), Axis, top, 0, GripPeakS) is { } peak)
            events.Add(new SwingEvent(EventNames.GripPeak, peak.TimeS, "greatest speed of the grip from top to impact, top of a cubic through 0.1 s", 0.9));
        else
            failed.Add(new FailedEvent(EventNames.GripPeak, double.IsNaN(top) ? "there is no top" : "the grip was not followed"));
        return new EventSet(events, failed).Ordered();
    }

    private double[]? Away(SegmentAxes? axes, double fromS, double toS) =>
        axes is null || Side is not { } side || double.IsNaN(fromS) ? null : [.. axes.TurnSince(fromS, toS).Select(turn => -side * turn)];

    private double[] Filled(double[] values, string landmark)
    {
        var isFast = Hands.Contains(landmark) || landmark is "club_head" or "shaft";
        var limit = (int)Math.Round((isFast ? _plan.ClubGapS : _plan.BodyGapS) * Axis.SampleRateHz);
        var split = Math.Clamp(Axis.To(0) + 1, 0, values.Length);
        return [.. GapFill.Of(values.AsSpan(0, split), limit).Values, .. GapFill.Of(values.AsSpan(split), limit).Values];
    }

    /// <summary>The ball lies on the toe side of the body: compares the club at impact with the pelvis or the shoulders.</summary>
    private int? FindSide()
    {
        var club = Raw("club_head") ?? Raw("grip");
        var body = Pelvis ?? Body("lead_shoulder");
        if (club is null || body is null)
            return null;
        var across = club.Mean(-0.02, 0.02).Z - body.Mean(-0.02, 0.02).Z;
        return double.IsNaN(across) ? null : across > 0 ? 1 : -1;
    }
}
