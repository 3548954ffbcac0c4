namespace SwingStudy.App.Demo.Model;

/// <summary>Where the marked points of a right-handed player and the club are, seconds from top.</summary>
internal sealed class Figurine
{
    /// <summary>Knee flexion of the trail leg at address from which the length of the legs follows, degrees.</summary>
    private const double FlexionAtAddress = 36;

    private const double BallHeight = 0.02;
    private const double PelvisZ = Ground.FeetZ - 0.08;
    private const double AnkleHeight = 0.08;
    private const double ShoulderWidth = 0.37;

    /// <summary>Greatest reach of a leg, as a share of its length: beyond it the heel leaves the ground.</summary>
    private const double StretchedLeg = 0.995;

    private static readonly Point3 Forward = new(0, 0, 1);

    private readonly SwingStyle _style;
    private readonly Links _links;
    private readonly PulseTrain _along;
    private readonly PulseTrain _up;
    private readonly Course _pelvisTurn;
    private readonly Course _trunkTurn;
    private readonly Course _trunkTilt;
    private readonly Course _trailHeel;
    private readonly double _legPart;

    public Figurine(SwingStyle style, Links links)
    {
        (_style, _links, _along, _up) = (style, links, style.Feet.Target, style.Feet.Vertical);
        var (start, impact) = (links.Start, links.ImpactTime);
        _pelvisTurn = InDegrees((start, 0), (-0.06, -42), (impact, 38), (impact + 0.5, 75));
        _trunkTurn = InDegrees((start, 0), (-0.01, -90), (impact + 0.03, 26), (impact + 0.5, 95));
        _trunkTilt = InDegrees((start, 12), (0, -18), (impact, 18), (impact + 0.5, 5));
        _trailHeel = new([(0, 0), (impact, 0.05), (impact + 0.4, 0.12)]);
        var leg = (Hip(start, -1) - Ankle(start, -1)).Norm;
        _legPart = leg / (2 * Math.Cos(FlexionAtAddress * Math.PI / 360));
    }

    /// <summary>Names of the points, as channels name them, in the order of <see cref="At"/>.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [
        "club_head", "shaft", "grip", "lead_wrist", "lead_elbow", "lead_shoulder", "trail_shoulder", "pelvis_front_lead", "pelvis_front_trail",
        "pelvis_back", "lead_hip", "lead_knee", "lead_ankle", "trail_hip", "trail_knee", "trail_ankle",
    ];

    /// <summary>All points.</summary>
    public Point3[] At(double time)
    {
        var (shoulder, arm, club) = Chain(time);
        var (length, hands) = (_style.Hands.ArmLength, shoulder + (_style.Hands.ArmLength * arm));
        var (turn, tilt) = (_trunkTurn.At(time), _trunkTilt.At(time));
        var acrossTrunk = Turned(new(-Math.Cos(tilt), -Math.Sin(tilt), 0), turn);
        var (leadHip, leadKnee, leadAnkle) = Leg(time, 1);
        var (trailHip, trailKnee, trailAnkle) = Leg(time, -1);
        return
        [
            hands + (_style.Club.Length * club), hands + (0.35 * club), hands, shoulder + (0.9 * length * arm), shoulder + (0.46 * length * arm), shoulder,
            shoulder + (ShoulderWidth * acrossTrunk), OnPelvis(time, new(0.12, 0, 0.08)), OnPelvis(time, new(-0.12, 0, 0.08)), OnPelvis(time, new(0, 0, -0.16)),
            leadHip, leadKnee, leadAnkle, trailHip, trailKnee, trailAnkle,
        ];
    }

    /// <summary>Height of the pelvis's middle above the ground, m.</summary>
    public double PelvisHeight(double time) => OnPelvis(time, default).Y;

    /// <summary>Knee flexion of the lead (1) or trail (-1) leg, degrees; 0 = straight.</summary>
    public double KneeFlexion(double time, int side)
    {
        var (hip, _, ankle) = Leg(time, side);
        return 2 * Math.Acos(Math.Min(1, (hip - ankle).Norm / (2 * _legPart))) * 180 / Math.PI;
    }

    private (Point3 Shoulder, Point3 Arm, Point3 Club) Chain(double time)
    {
        var (along, up, outward) = _links.ShoulderAt(time);
        var state = _links.At(time);
        return (
            InLaboratory(along, up, outward) + new Point3(0, BallHeight, 0),
            InLaboratory(-Math.Sin(state.Arm), -Math.Cos(state.Arm), 0),
            InLaboratory(-Math.Sin(state.Club), -Math.Cos(state.Club), 0));
    }

    /// <summary>From the sloping plane of the swing through the ball, which leans toward the player, to the laboratory.</summary>
    private Point3 InLaboratory(double along, double up, double outward)
    {
        var (sin, cos) = Math.SinCos(_style.Club.Plane * Math.PI / 180);
        return new(along, (up * sin) + (outward * cos), (outward * sin) - (up * cos));
    }

    private (Point3 Hip, Point3 Knee, Point3 Ankle) Leg(double time, int side)
    {
        var (hip, ankle) = (Hip(time, side), Ankle(time, side));
        var longest = 2 * _legPart * StretchedLeg;
        var (x, z) = (hip.X - ankle.X, hip.Z - ankle.Z);
        var lowest = hip.Y - Math.Sqrt((longest * longest) - (x * x) - (z * z));
        ankle = ankle with { Y = Math.Max(ankle.Y, lowest) };
        var line = hip - ankle;
        var along = 1 / line.Norm * line;
        var bend = Forward - (Forward.Dot(along) * along);
        var offset = Math.Sqrt(Math.Max(0, (_legPart * _legPart) - (line.Dot(line) / 4)));
        return (hip, ankle + (0.5 * line) + (offset / bend.Norm * bend), ankle);
    }

    private Point3 Hip(double time, int side) => OnPelvis(time, new(0.085 * side, -0.09, 0));

    private Point3 Ankle(double time, int side) =>
        new(Ground.StanceX + (Ground.HalfStance * side), AnkleHeight + (side < 0 ? _trailHeel.At(time) : 0), Ground.FeetZ - 0.06);

    private Point3 OnPelvis(double time, Point3 place) =>
        new Point3(Ground.StanceX + _along.WayAt(time), (0.53 * _style.Body.Stature) + _up.WayAt(time), PelvisZ) + Turned(place, _pelvisTurn.At(time));

    private static Point3 Turned(Point3 place, double turn)
    {
        var (sin, cos) = Math.SinCos(turn);
        return new((place.X * cos) + (place.Z * sin), place.Y, (place.Z * cos) - (place.X * sin));
    }

    private static Course InDegrees(params (double Time, double Degrees)[] stations) =>
        new([.. stations.Select(station => (station.Time, station.Degrees * Math.PI / 180))]);
}
