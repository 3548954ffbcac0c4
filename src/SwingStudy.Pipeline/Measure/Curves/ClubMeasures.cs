using SwingStudy.Motion.Kinematics;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>The club head at impact.</summary>
internal static class ClubMeasures
{
    private static readonly string[] Head = ["club_head"];

    private static readonly string Low = FormattableString.Invariant(
        $"lowest point of the club head mark, of height as a polynomial of degree {LowPoint.Degree} of the place along the target line within {LowPoint.ReachM} m of contact");

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
        new("low_point_along", $"{Low}, along the target line from the mark's place at contact", swing => OfLow(swing, low => low.AlongM)) { Landmarks = Head },
        new("low_point_below_contact", $"{Low}, below the mark's height at contact", swing => OfLow(swing, low => low.BelowM)) { Landmarks = Head },
        new("low_point_height", $"{Low}, above the mark's mean height at address, where the sole stands on the ground",
            swing => OfLow(swing, low => low.HeightM - swing.Motion!.Raw("club_head")!.Mean(swing.AddressFromS, swing.AddressToS).Y)) { Landmarks = Head, Needs = MeasureNeeds.Address },
    ];

    private static Measured OfLow(SwingSignals swing, Func<LowPoint, double> metres)
    {
        var contact = swing.Motion!.HeadAtImpact.Place;
        return contact.IsMissing ? Measured.None("the place of contact is not known: samples before impact are missing")
            : LowPoint.Of(swing.Motion.Raw("club_head")!, contact, 0) is { } low ? 1000 * metres(low)
            : Measured.None(FormattableString.Invariant($"fewer than {LowPoint.LeastSamples} samples in a row within {LowPoint.ReachM} m of contact, or no lowest point between them"));
    }
}
