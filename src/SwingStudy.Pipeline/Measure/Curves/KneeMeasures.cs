using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Kinematics;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>Flexion of the knees, 0 = straight.</summary>
internal static class KneeMeasures
{
    private static readonly string[] Trail = ["trail_hip", "trail_knee", "trail_ankle"];
    private static readonly string[] Lead = ["lead_hip", "lead_knee", "lead_ankle"];
    private const string Flexion = "180 less the angle hip, knee, ankle";

    public static IReadOnlyList<CurveMeasure> All { get; } =
    [
        new("trail_knee_flexion_address", $"{Flexion}, mean of address", swing => Span.Mean(Curve(swing, Trail), swing.Motion!.Axis, swing.AddressFromS, swing.AddressToS))
        {
            Landmarks = Trail, Needs = MeasureNeeds.Address,
        },
        new("trail_knee_flexion_top", $"{Flexion}, at top", swing => Span.At(Curve(swing, Trail), swing.Motion!.Axis, swing.TopS)) { Landmarks = Trail, Needs = MeasureNeeds.Top },
        new("trail_knee_flexion_impact", $"{Flexion}, at impact", swing => Span.At(Curve(swing, Trail), swing.Motion!.Axis, 0)) { Landmarks = Trail },
        new("lead_knee_extension_downswing", $"greatest lead flexion after top less that at impact; {Flexion}", swing =>
        {
            var (curve, axis) = (Curve(swing, Lead), swing.Motion!.Axis);
            return At.Height(At.Highest(curve, axis, swing.TopS, 0)) - Span.At(curve, axis, 0);
        }) { Landmarks = Lead, Needs = MeasureNeeds.Top },
    ];

    private static double[] Curve(SwingSignals swing, string[] marks)
    {
        Trajectory hip = swing.Motion!.Body(marks[0])!, knee = swing.Motion.Body(marks[1])!, ankle = swing.Motion.Body(marks[2])!;
        return [.. Enumerable.Range(0, hip.Count).Select(i => Angles.Flexion(hip[i], knee[i], ankle[i]))];
    }
}
