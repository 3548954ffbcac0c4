using SwingStudy.Motion.Geometry;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>Turns of pelvis and trunk about the vertical and how far they are apart, + away from the target.</summary>
internal static class TurnMeasures
{
    private const string Turn = "turn in space about the vertical since address, axial first (Y-X-Z)";
    private const MeasureNeeds Usual = MeasureNeeds.Address | MeasureNeeds.Side;

    public static IReadOnlyList<CurveMeasure> All { get; } =
    [
        new("pelvis_turn_top", $"{Turn}, pelvis from its three marks, at top", swing => Span.At(Pelvis(swing), swing.Motion!.Axis, swing.TopS))
        {
            Needs = Usual | MeasureNeeds.Pelvis | MeasureNeeds.Top,
        },
        new("trunk_turn_top", $"{Turn}, trunk from both shoulders and the middle of the pelvis, at top", swing => Span.At(Trunk(swing), swing.Motion!.Axis, swing.TopS))
        {
            Needs = Usual | MeasureNeeds.Trunk | MeasureNeeds.Top,
        },
        new("separation_max", $"greatest trunk less pelvis turn, start to impact; {Turn}", swing =>
            At.Height(At.Highest([.. Trunk(swing).Zip(Pelvis(swing), (trunk, pelvis) => trunk - pelvis)], swing.Motion!.Axis, swing.StartS, 0)))
        {
            Needs = Usual | MeasureNeeds.Trunk | MeasureNeeds.Start,
        },
    ];

    private static double[] Pelvis(SwingSignals swing) => swing.Motion!.PelvisTurn(swing.AddressFromS, swing.AddressToS)!;

    private static double[] Trunk(SwingSignals swing) => swing.Motion!.TrunkTurn(swing.AddressFromS, swing.AddressToS)!;
}
