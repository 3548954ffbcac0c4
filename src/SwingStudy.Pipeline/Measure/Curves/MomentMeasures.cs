using SwingStudy.Motion.Forces;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>Moments about the vertical; + turns the body toward the target.</summary>
internal static class MomentMeasures
{
    private const MeasureNeeds Usual = MeasureNeeds.Places | MeasureNeeds.Side | MeasureNeeds.Downswing;

    public static IReadOnlyList<CurveMeasure> All { get; } =
    [
        new("free_moment_peak_lead", "largest lead free moment with its sign, downswing", swing => Largest(swing, swing.Forces!.Lead!)) { Needs = MeasureNeeds.Lead | Usual },
        new("free_moment_peak_trail", "largest trail free moment with its sign, downswing", swing => Largest(swing, swing.Forces!.Trail!)) { Needs = MeasureNeeds.Trail | Usual },
        new("pivot_moment_peak", "largest moment of both feet about the vertical through their common centre of pressure with its sign, downswing",
            swing => Largest(swing, swing.Forces!.Total!)) { Needs = MeasureNeeds.Total | Usual },
    ];

    private static double Largest(SwingSignals swing, GroundReaction reaction) =>
        swing.Side!.Value * At.Height(At.Largest(reaction.VerticalMoment, swing.Forces!.Axis, swing.DownswingFromS, 0));
}
