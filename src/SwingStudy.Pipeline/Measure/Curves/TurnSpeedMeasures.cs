using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Kinematics;
using SwingStudy.Motion.Signals;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>Greatest angular speeds of pelvis, trunk, lead arm and club in the downswing, their times and their order.</summary>
internal static class TurnSpeedMeasures
{
    /// <summary>How long after impact the trunk's peak may be.</summary>
    private const double AfterImpactS = 0.1;

    private static readonly string[] Arm = ["lead_shoulder", "lead_wrist"];
    private static readonly string[] Club = ["grip", "club_head"];

    public static IReadOnlyList<CurveMeasure> All { get; } =
    [
        .. Pair("pelvis", "pelvis, from its three marks", PelvisSpeed, MeasureNeeds.Pelvis, []),
        .. Pair("trunk", "trunk, from shoulders and pelvis", TrunkSpeed, MeasureNeeds.Trunk, []),
        new("peak_time_trunk_past_impact", "time of the greatest resultant angular speed of the trunk, from shoulders and pelvis, top to impact + 0.1 s",
            swing => At.Milliseconds(At.Highest(TrunkSpeed(swing), swing.Motion!.Axis, swing.TopS, AfterImpactS), swing.Motion.Axis)) { Needs = MeasureNeeds.Trunk | MeasureNeeds.Top },
        .. Pair("lead_arm", "line from lead shoulder to lead wrist", ArmSpeed, MeasureNeeds.None, Arm),
        new("peak_turn_speed_club", "greatest resultant angular speed of the line from grip to club head, top to impact", swing => ClubPeak(swing).Value) { Needs = MeasureNeeds.Top, Landmarks = Club },
        new("peak_time_club", "time of the greatest resultant angular speed of the line from grip to club head, top to impact", swing => 1000 * ClubPeak(swing).TimeS)
        {
            Needs = MeasureNeeds.Top, Landmarks = Club,
        },
        new("peak_order", "order of the greatest resultant angular speeds, downswing; within one sample = unresolved", swing => Measured.Word(PeakOrder.Of(
        [
            ('P', Seconds(swing, PelvisSpeed(swing))), ('T', Seconds(swing, TrunkSpeed(swing))),
            ('A', Seconds(swing, ArmSpeed(swing))), ('C', ClubPeak(swing).TimeS),
        ], 1 / swing.Motion!.Axis.SampleRateHz))) { Needs = MeasureNeeds.Trunk | MeasureNeeds.Pelvis | MeasureNeeds.Top, Landmarks = [.. Arm, .. Club] },
    ];

    private static CurveMeasure[] Pair(string segment, string what, Func<SwingSignals, double[]> speed, MeasureNeeds needs, string[] marks) =>
    [
        new($"peak_turn_speed_{segment}", $"greatest resultant angular speed of the {what}, top to impact",
            swing => At.Height(Greatest(swing, speed(swing)))) { Needs = needs | MeasureNeeds.Top, Landmarks = marks },
        new($"peak_time_{segment}", $"time of the greatest resultant angular speed of the {what}, top to impact",
            swing => At.Milliseconds(Greatest(swing, speed(swing)), swing.Motion!.Axis)) { Needs = needs | MeasureNeeds.Top, Landmarks = marks },
    ];

    private static double[] PelvisSpeed(SwingSignals swing) => Degrees(swing.Motion!.PelvisAxes!.AngularVelocity());

    private static double[] TrunkSpeed(SwingSignals swing) => Degrees(swing.Motion!.TrunkAxes!.AngularVelocity());

    private static double[] ArmSpeed(SwingSignals swing)
    {
        MovingFit from = swing.Motion!.Fit(Arm[0])!, to = swing.Motion.Fit(Arm[1])!;
        return Degrees(SegmentAxes.OfLine(Between(from.Place, to.Place), Between(from.Velocity, to.Velocity)));
    }

    /// <summary>The club may be fastest at impact itself, between two samples.</summary>
    private static (double TimeS, double Value) ClubPeak(SwingSignals swing)
    {
        var club = swing.Motion!.Club!;
        return At.Highest(club.TurnSpeed!, swing.Motion.Axis, swing.TopS, 0) is not { } peak ? (double.NaN, double.NaN)
            : club.TurnSpeedAtImpact > peak.Value ? (0, club.TurnSpeedAtImpact)
            : (Math.Min(0, swing.Motion.Axis.TimeOf(peak.Position)), peak.Value);
    }

    private static Trajectory Between(Trajectory from, Trajectory to) => new(
        [.. to.X.Zip(from.X, (a, b) => a - b)], [.. to.Y.Zip(from.Y, (a, b) => a - b)], [.. to.Z.Zip(from.Z, (a, b) => a - b)], from.Axis);

    private static double[] Degrees(Trajectory radians) => [.. radians.Lengths().Select(speed => Angles.DegreesPerRadian * speed)];

    private static Peak? Greatest(SwingSignals swing, double[] speeds) => At.Highest(speeds, swing.Motion!.Axis, swing.TopS, 0);

    private static double Seconds(SwingSignals swing, double[] speeds) => At.Milliseconds(Greatest(swing, speeds), swing.Motion!.Axis) / 1000;
}
