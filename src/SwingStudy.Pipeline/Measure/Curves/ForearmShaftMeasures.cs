using SwingStudy.Motion.Events;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>Angle of lead forearm and shaft.</summary>
internal static class ForearmShaftMeasures
{
    private const string Angle = "included angle of elbow to wrist and grip to head, 180 = one line";

    public static IReadOnlyList<CurveMeasure> All { get; } =
    [
        new("forearm_shaft_top", $"{Angle}, at top", swing => ForearmShaft.At(swing.Motion!, swing.TopS)) { Landmarks = ForearmShaft.Landmarks, Needs = MeasureNeeds.Top },
        new("forearm_shaft_grip_peak", $"{Angle}, at peak grip speed", swing => ForearmShaft.At(swing.Motion!, swing[EventNames.GripPeak]))
        {
            Landmarks = ForearmShaft.Landmarks, Needs = MeasureNeeds.GripPeak,
        },
        new("forearm_shaft_impact", $"{Angle}, at impact, from samples before it", swing => ForearmShaft.AtImpact(swing.Motion!)) { Landmarks = ForearmShaft.Landmarks },
        new("wrist_turn_speed_lead", $"greatest rate of the {Angle}, downswing",
            swing => At.Height(At.Highest(ForearmShaft.Rate(swing.Motion!), swing.Motion!.Axis, swing.TopS, 0))) { Landmarks = ForearmShaft.Landmarks, Needs = MeasureNeeds.Top },
    ];
}
