using SwingStudy.Motion.Geometry;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>Impulses over the downswing.</summary>
internal static class ImpulseMeasures
{
    public static IReadOnlyList<CurveMeasure> All { get; } =
    [
        new("vertical_impulse_downswing", "integral of summed vertical force less body weight, downswing", swing =>
            Span.Integral([.. swing.Forces!.Total!.ForceY.Select(force => force - swing.Forces.BodyWeightN)], swing.Forces.Axis, swing.DownswingFromS, 0))
        {
            Needs = MeasureNeeds.Total | MeasureNeeds.Weight | MeasureNeeds.Downswing,
        },
        new("target_impulse_downswing", "integral of summed force along the target line, downswing",
            swing => Span.Integral(swing.Forces!.Total!.ForceX, swing.Forces.Axis, swing.DownswingFromS, 0)) { Needs = MeasureNeeds.Total | MeasureNeeds.Downswing },
        new("toe_impulse_downswing", "integral of summed toe-heel force, downswing",
            swing => swing.Side!.Value * Span.Integral(swing.Forces!.Total!.ForceZ, swing.Forces.Axis, swing.DownswingFromS, 0)) { Needs = MeasureNeeds.Total | MeasureNeeds.Downswing | MeasureNeeds.Side },
    ];
}
