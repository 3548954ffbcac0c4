using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>The combined centre of pressure.</summary>
internal static class PressureMeasures
{
    private const string Reference = "0 and 100 = middles of the trail and the lead plate";

    private const MeasureNeeds BothPlates = MeasureNeeds.Lead | MeasureNeeds.Trail | MeasureNeeds.Total;

    /// <summary>Share of body weight below which the centre moves too noisily for a speed.</summary>
    private const double LeastShareForSpeed = 0.1;

    public static IReadOnlyList<CurveMeasure> All { get; } =
    [
        new("cop_along_address", $"centre of pressure along the target line, mean of address; {Reference}",
            swing => Share(swing, Span.Mean(swing.Forces!.Total!.CentreX, swing.Forces.Axis, swing.AddressFromS, swing.AddressToS))) { Needs = BothPlates | MeasureNeeds.Places | MeasureNeeds.Address },
        new("cop_along_top", $"centre of pressure along the target line at top; {Reference}",
            swing => Share(swing, Span.At(swing.Forces!.Total!.CentreX, swing.Forces.Axis, swing.TopS))) { Needs = BothPlates | MeasureNeeds.Places | MeasureNeeds.Top },
        new("cop_along_impact", $"centre of pressure along the target line at impact; {Reference}",
            swing => Share(swing, Span.At(swing.Forces!.Total!.CentreX, swing.Forces.Axis, 0))) { Needs = BothPlates | MeasureNeeds.Places },
        new("cop_along_range", "greatest less least centre of pressure along the target line, start to impact", swing =>
        {
            var (curve, axis) = (swing.Forces!.Total!.CentreX, swing.Forces.Axis);
            return 1000 * (At.Height(Span.Highest(curve, axis, swing.StartS, 0)) - At.Height(Span.Lowest(curve, axis, swing.StartS, 0)));
        }) { Needs = MeasureNeeds.Total | MeasureNeeds.Places | MeasureNeeds.Start },
        new("cop_along_speed_peak", "greatest speed of the centre of pressure to the target, downswing; blank below 10 % of body weight",
            swing => At.Height(Span.Highest(Speed(swing), swing.Forces!.Axis, swing.DownswingFromS, 0))) { Needs = MeasureNeeds.Total | MeasureNeeds.Places | MeasureNeeds.Downswing | MeasureNeeds.Weight },
        new("cop_toe_impact", "centre of pressure toe-heel at impact; 0 = line through the middles of the plates", swing =>
        {
            var middle = swing.Forces!.Centres!.Average(centre => centre.Z);
            return swing.Side!.Value * 1000 * (Span.At(swing.Forces.Total!.CentreZ, swing.Forces.Axis, 0) - middle);
        }) { Needs = MeasureNeeds.Total | MeasureNeeds.Places | MeasureNeeds.Side },
    ];

    private static double Share(SwingSignals swing, double alongM)
    {
        var (lead, trail) = (swing.Forces!.CentreOf("lead")!.Value, swing.Forces.CentreOf("trail")!.Value);
        return 100 * (alongM - trail.X) / (lead.X - trail.X);
    }

    private static double[] Speed(SwingSignals swing)
    {
        var forces = swing.Forces!;
        double[] loaded = [.. forces.Total!.CentreX.Zip(forces.Total.ForceY, (x, force) => force >= LeastShareForSpeed * forces.BodyWeightN ? x : double.NaN)];
        return Span.EachStretch(loaded, 3, part => Difference.Central(part, forces.Axis.SampleRateHz));
    }
}
