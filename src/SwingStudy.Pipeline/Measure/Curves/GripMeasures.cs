using SwingStudy.Motion.Events;
using SwingStudy.Motion.Signals;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>Speed of the grip.</summary>
internal static class GripMeasures
{
    private static readonly string[] Grip = ["grip"];

    public static IReadOnlyList<CurveMeasure> All { get; } =
    [
        new("grip_speed_peak", "greatest speed of the grip mark, top to impact", swing => At.Height(Greatest(swing))) { Landmarks = Grip, Needs = MeasureNeeds.Top },
        new("grip_speed_peak_before_impact", "time from the greatest speed of the grip mark to impact", swing => -1000 * swing[EventNames.GripPeak])
        {
            Landmarks = Grip, Needs = MeasureNeeds.GripPeak,
        },
        new("grip_speed_at_impact", "speed of the grip mark at impact, from samples before it", swing => swing.Motion!.Fit("grip")!.VelocityAtImpact.Length) { Landmarks = Grip },
    ];

    private static Peak? Greatest(SwingSignals swing) => At.Highest(swing.Motion!.Fit("grip")!.Velocity.Lengths(), swing.Motion.Axis, swing.TopS, 0);
}
