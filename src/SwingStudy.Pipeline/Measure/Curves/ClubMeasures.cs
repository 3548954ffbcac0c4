using SwingStudy.Motion.Kinematics;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>The club head at impact.</summary>
internal static class ClubMeasures
{
    private static readonly string[] Head = ["club_head"];

    public static IReadOnlyList<CurveMeasure> All { get; } =
    [
        new("club_head_speed", "speed of the club head mark at impact", swing => swing.Motion!.HeadAtImpact.Velocity.Length) { Landmarks = Head },
        new("attack_angle", "direction of the club head mark at impact above the horizontal", swing =>
        {
            var v = swing.Motion!.HeadAtImpact.Velocity;
            return Angles.DegreesPerRadian * Math.Atan2(v.Y, Math.Sqrt((v.X * v.X) + (v.Z * v.Z)));
        }) { Landmarks = Head },
        new("club_path_angle", "horizontal direction of the club head mark at impact against the target line", swing =>
        {
            var v = swing.Motion!.HeadAtImpact.Velocity;
            return swing.Side!.Value * Angles.DegreesPerRadian * Math.Atan2(v.Z, v.X);
        }) { Landmarks = Head, Needs = MeasureNeeds.Side },
    ];
}
