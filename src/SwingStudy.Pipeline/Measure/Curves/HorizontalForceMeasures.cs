using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Signals;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>Forces along the ground.</summary>
internal static class HorizontalForceMeasures
{
    private const MeasureNeeds Usual = MeasureNeeds.Weight | MeasureNeeds.Downswing;

    public static IReadOnlyList<CurveMeasure> All { get; } =
    [
        new("target_force_peak_trail", "greatest trail force to the target, downswing",
            swing => Weights(swing, At.Highest(swing.Forces!.Trail!.ForceX, swing.Forces.Axis, swing.DownswingFromS, 0))) { Needs = MeasureNeeds.Trail | Usual },
        new("target_force_brake_lead", "most negative lead force along the target line, downswing",
            swing => Weights(swing, At.Lowest(swing.Forces!.Lead!.ForceX, swing.Forces.Axis, swing.DownswingFromS, 0))) { Needs = MeasureNeeds.Lead | Usual },
        new("toe_force_peak_lead", "largest lead toe-heel force with its sign, downswing", swing => Toe(swing, swing.Forces!.Lead!)) { Needs = MeasureNeeds.Lead | Usual | MeasureNeeds.Side },
        new("toe_force_peak_trail", "largest trail toe-heel force with its sign, downswing", swing => Toe(swing, swing.Forces!.Trail!)) { Needs = MeasureNeeds.Trail | Usual | MeasureNeeds.Side },
        new("horizontal_peak_lead", "greatest size of the lead force along the ground, downswing", swing => Size(swing, swing.Forces!.Lead!)) { Needs = MeasureNeeds.Lead | Usual },
        new("horizontal_peak_trail", "greatest size of the trail force along the ground, downswing", swing => Size(swing, swing.Forces!.Trail!)) { Needs = MeasureNeeds.Trail | Usual },
    ];

    private static double Weights(SwingSignals swing, Peak? peak) => At.Height(peak) / swing.Forces!.BodyWeightN;

    private static double Toe(SwingSignals swing, GroundReaction foot) =>
        swing.Side!.Value * Weights(swing, At.Largest(foot.ForceZ, swing.Forces!.Axis, swing.DownswingFromS, 0));

    private static double Size(SwingSignals swing, GroundReaction foot) => Weights(swing, At.Highest(
        [.. foot.ForceX.Zip(foot.ForceZ, (x, z) => Math.Sqrt((x * x) + (z * z)))], swing.Forces!.Axis, swing.DownswingFromS, 0));
}
