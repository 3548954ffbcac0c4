using SwingStudy.Motion.Geometry;

namespace SwingStudy.Motion.Tests.Support;

/// <summary>An invented swing whose places, speeds and angles are known at every moment: an arm and a club in a tilted plane, a pelvis, a trunk and a knee.</summary>
/// <remarks>Time 0 is impact. No number is a norm for a player.</remarks>
internal sealed record InventedSwing
{
    public double StartS { get; init; } = -1.1;

    public double TopS { get; init; } = -0.27;

    public double TransitionS { get; init; } = -0.31;

    public double FinishS { get; init; } = 0.7;

    /// <summary>+1 right-handed, −1 left-handed.</summary>
    public int Side { get; init; } = 1;

    public Vector3D Place { get; init; }

    /// <summary>Share of its speed that the club loses at impact.</summary>
    public double LostAtImpact { get; init; } = 0.2;

    private const double Arm = 0.65;
    private const double Club = 1.05;
    private static readonly double Tilt = 50 * Math.PI / 180;

    private Func<double, double> ArmAngle => Quintic.Chain(
        new Quintic(StartS, TopS, (0, 0, 0), (-1.7, 0, 30)), new Quintic(TopS, 0, (-1.7, 0, 30), (0.03, 9, -60)),
        new Quintic(0, FinishS, (0.03, 9 * (1 - LostAtImpact), -20), (2.2, 0, 0)));

    private Func<double, double> Hinge => Quintic.Chain(
        new Quintic(StartS, TopS, (0, 0, 0), (-1.5, 0, 0)), new Quintic(TopS, 0, (-1.5, 0, -10), (0, 26, 150)),
        new Quintic(0, FinishS, (0, 26 * (1 - LostAtImpact), 0), (1.4, 0, 0)));

    private Func<double, double> PelvisAngle => Quintic.Chain(
        new Quintic(StartS, TransitionS, (0, 0, 0), (-0.75, 0, 20)), new Quintic(TransitionS, 0, (-0.75, 0, 20), (0.6, 4, -20)),
        new Quintic(0, FinishS, (0.6, 4, -20), (1.2, 0, 0)));

    private Func<double, double> PelvisHeight => Quintic.Chain(
        new Quintic(StartS, -0.25, (0, 0, 0), (-0.04, 0, 1.5)), new Quintic(-0.25, FinishS, (-0.04, 0, 1.5), (0.05, 0, 0)));

    /// <summary>Knee flexion in degrees.</summary>
    public double KneeDegrees(double time) => Quintic.Chain(
        new Quintic(StartS, TopS, (25, 0, 0), (40, 0, 0)), new Quintic(TopS, FinishS, (40, 0, 0), (20, 0, 0)))(time);

    public Vector3D Grip(double time)
    {
        var a = ArmAngle(time);
        return InPlane(Arm * Math.Sin(a), -Arm * Math.Cos(a));
    }

    public Vector3D Elbow(double time) => Shoulder + (0.55 * (Grip(time) - Shoulder));

    public Vector3D Wrist(double time) => Shoulder + (0.95 * (Grip(time) - Shoulder));

    public Vector3D Shoulder => InPlane(0, 0);

    public Vector3D Head(double time)
    {
        var (a, b) = (ArmAngle(time), ArmAngle(time) + Hinge(time));
        return InPlane((Arm * Math.Sin(a)) + (Club * Math.Sin(b)), -(Arm * Math.Cos(a)) - (Club * Math.Cos(b)));
    }

    /// <summary>Turn of the pelvis away from the target, degrees.</summary>
    public double PelvisTurn(double time) => -PelvisAngle(time) * 180 / Math.PI;

    public Vector3D Pelvis(double time, double forward, double toLead)
    {
        // Facing the ball (z for a right-handed player), the lead side is at + x. Turning to the target is right-handed about up.
        var turned = Rotation3D.About(Vector3D.Up, PelvisAngle(time)).Turn(new Vector3D(toLead, 0, forward));
        return Located(new Vector3D(turned.X, 0.95 + PelvisHeight(time), turned.Z - 0.9));
    }

    public Vector3D TrailShoulder(double time) =>
        Located(Rotation3D.About(Vector3D.Up, 1.8 * PelvisAngle(time)).Turn(new Vector3D(-0.2, 0, 0)) + new Vector3D(0, 1.4, -0.8));

    public Vector3D LeadShoulderOfTrunk(double time) =>
        Located(Rotation3D.About(Vector3D.Up, 1.8 * PelvisAngle(time)).Turn(new Vector3D(0.2, 0, 0)) + new Vector3D(0, 1.4, -0.8));

    /// <summary>Hip, knee and ankle of the trail leg in one plane.</summary>
    public (Vector3D Hip, Vector3D Knee, Vector3D Ankle) Leg(double time)
    {
        var half = KneeDegrees(time) * Math.PI / 360;
        var knee = new Vector3D(-0.2, 0.5, -0.8);
        return (Located(knee + (0.42 * new Vector3D(0, Math.Cos(half), -Math.Sin(half)))), Located(knee),
            Located(knee + (0.42 * new Vector3D(0, -Math.Cos(half), -Math.Sin(half)))));
    }

    /// <summary>Speed from the places a little before and after; just before impact, from before alone.</summary>
    public static double Speed(Func<double, Vector3D> point, double time)
    {
        const double Step = 1e-5;
        var end = time == 0 ? 0 : time + Step;
        return (point(end) - point(time - Step)).Length / (end - (time - Step));
    }

    /// <summary>Greatest value and its time in a span, on a grid of 0.1 ms.</summary>
    public static (double Time, double Value) Greatest(Func<double, double> value, double from, double to) =>
        Enumerable.Range(0, (int)((to - from) / 1e-4)).Select(i => from + (i * 1e-4)).Select(t => (t, value(t))).MaxBy(pair => pair.Item2);

    /// <summary>What cameras would see: samples with noise, from before the swing to after it.</summary>
    public static Trajectory Seen(Func<double, Vector3D> point, double rateHz, double noiseM, int seed = 1, double fromS = -1.6, double toS = 1.1, double phaseS = 0)
    {
        var axis = new TimeAxis(rateHz, fromS + phaseS, (int)((toS - fromS) * rateHz));
        var noise = new Noise(seed);
        var places = Enumerable.Range(0, axis.Count).Select(i => point(axis.TimeOf(i))).ToList();
        return new Trajectory(
            [.. places.Select(p => p.X + (noiseM * noise.Next()))], [.. places.Select(p => p.Y + (noiseM * noise.Next()))],
            [.. places.Select(p => p.Z + (noiseM * noise.Next()))], axis);
    }

    private Vector3D InPlane(double along, double upward) => Located(new Vector3D(along, 1.35 + (upward * Math.Sin(Tilt)), -0.95 - (upward * Math.Cos(Tilt))));

    private Vector3D Located(Vector3D right) => Place + (right with { Z = Side * right.Z });
}
