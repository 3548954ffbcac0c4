using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>Where the pelvis goes: the mean of its three marks.</summary>
internal static class PelvisMeasures
{
    private const double LateShare = 0.75;
    private const MeasureNeeds Usual = MeasureNeeds.Pelvis | MeasureNeeds.Address | MeasureNeeds.Top;

    public static IReadOnlyList<CurveMeasure> All { get; } =
    [
        new("pelvis_drop", "lowest mean height of the pelvis marks, last quarter of the backswing to impact, less that at address",
            swing => 1000 * (At.Height(Lowest(swing)) - Address(swing).Y)) { Needs = Usual },
        new("pelvis_rise", "mean height of the pelvis marks at impact less its lowest, last quarter of the backswing to impact",
            swing => 1000 * (swing.Motion!.Pelvis!.At(0).Y - At.Height(Lowest(swing)))) { Needs = Usual },
        new("pelvis_low_time", "time of the lowest mean height of the pelvis marks, last quarter of the backswing to impact",
            swing => At.Milliseconds(Lowest(swing), swing.Motion!.Axis)) { Needs = MeasureNeeds.Pelvis | MeasureNeeds.Top },
        new("pelvis_shift_impact", "mean of the pelvis marks along the target line at impact less that at address",
            swing => 1000 * (swing.Motion!.Pelvis!.At(0).X - Address(swing).X)) { Needs = MeasureNeeds.Pelvis | MeasureNeeds.Address },
    ];

    private static Vector3D Address(SwingSignals swing) => swing.Motion!.Pelvis!.Mean(swing.AddressFromS, swing.AddressToS);

    private static Peak? Lowest(SwingSignals swing) =>
        At.Lowest(swing.Motion!.Pelvis!.Y, swing.Motion.Axis, swing.StartS + (LateShare * (swing.TopS - swing.StartS)), 0);
}
