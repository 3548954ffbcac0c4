using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>Weight, peaks and unweighting of the vertical force.</summary>
internal static class VerticalForceMeasures
{
    /// <summary>How long after impact the lead foot's peak may be.</summary>
    private const double AfterImpactS = 0.1;

    /// <summary>Share of the backswing after which it is late.</summary>
    private const double LateShare = 0.75;

    /// <summary>Without a top, how long before impact unweighting is searched.</summary>
    private const double LongestS = 0.6;

    public static IReadOnlyList<CurveMeasure> All { get; } =
    [
        new("body_weight", "mean summed vertical force", swing => swing.Forces!.BodyWeightN) { Needs = MeasureNeeds.Weight },
        new("vertical_peak_lead", "greatest lead vertical force, downswing to impact + 0.1 s", swing => Weights(swing, LeadPeak(swing))) { Needs = MeasureNeeds.Lead | MeasureNeeds.Weight | MeasureNeeds.Downswing },
        new("vertical_peak_lead_time", "time of the greatest lead vertical force, downswing to impact + 0.1 s", swing => At.Milliseconds(LeadPeak(swing), swing.Forces!.Axis))
        {
            Needs = MeasureNeeds.Lead | MeasureNeeds.Downswing,
        },
        new("vertical_peak_trail", "greatest trail vertical force, start to impact",
            swing => Weights(swing, At.Highest(swing.Forces!.Trail!.ForceY, swing.Forces.Axis, swing.StartS, 0))) { Needs = MeasureNeeds.Trail | MeasureNeeds.Weight | MeasureNeeds.Start },
        new("vertical_peak_total", "greatest summed vertical force, downswing", swing => Weights(swing, TotalPeak(swing))) { Needs = MeasureNeeds.Total | MeasureNeeds.Weight | MeasureNeeds.Downswing },
        new("vertical_peak_total_time", "time of the greatest summed vertical force, downswing", swing => At.Milliseconds(TotalPeak(swing), swing.Forces!.Axis)) { Needs = MeasureNeeds.Total | MeasureNeeds.Downswing },
        new("unweight_min_total", "least summed vertical force, last quarter of the backswing to the downswing's peak", swing => Weights(swing, Least(swing)))
        {
            Needs = MeasureNeeds.Total | MeasureNeeds.Weight | MeasureNeeds.Downswing,
        },
        new("unweight_min_time", "time of the least summed vertical force, last quarter of the backswing to the downswing's peak",
            swing => At.Milliseconds(Least(swing), swing.Forces!.Axis)) { Needs = MeasureNeeds.Total | MeasureNeeds.Downswing },
        new("vertical_loading_rate_lead", "greatest slope of a moving 20 ms line through lead vertical force, downswing",
            swing => LoadingRate.Steepest(swing.Forces!.Lead!.ForceY, swing.Forces.Axis, swing.DownswingFromS, 0) / swing.Forces.BodyWeightN)
        {
            Needs = MeasureNeeds.Lead | MeasureNeeds.Weight | MeasureNeeds.Downswing,
        },
        new("lead_share_address", "lead over summed vertical force, mean of address", swing => Span.Mean(swing.Forces!.LeadShare!, swing.Forces.Axis, swing.AddressFromS, swing.AddressToS))
        {
            Needs = MeasureNeeds.Lead | MeasureNeeds.Trail | MeasureNeeds.Address,
        },
        new("lead_share_top", "lead over summed vertical force at top", swing => Span.At(swing.Forces!.LeadShare!, swing.Forces.Axis, swing.TopS)) { Needs = MeasureNeeds.Lead | MeasureNeeds.Trail | MeasureNeeds.Top },
        new("lead_share_impact", "lead over summed vertical force at impact", swing => Span.At(swing.Forces!.LeadShare!, swing.Forces.Axis, 0)) { Needs = MeasureNeeds.Lead | MeasureNeeds.Trail },
    ];

    private static double Weights(SwingSignals swing, Peak? peak) => At.Height(peak) / swing.Forces!.BodyWeightN;

    private static Peak? LeadPeak(SwingSignals swing) => At.Highest(swing.Forces!.Lead!.ForceY, swing.Forces.Axis, swing.DownswingFromS, AfterImpactS);

    private static Peak? TotalPeak(SwingSignals swing) => At.Highest(swing.Forces!.Total!.ForceY, swing.Forces.Axis, swing.DownswingFromS, 0);

    private static Peak? Least(SwingSignals swing)
    {
        var axis = swing.Forces!.Axis;
        var from = double.IsNaN(swing.TopS) || double.IsNaN(swing.StartS) ? -LongestS : swing.StartS + (LateShare * (swing.TopS - swing.StartS));
        return TotalPeak(swing) is { } peak ? At.Lowest(swing.Forces.Total!.ForceY, axis, from, axis.TimeOf(peak.Index)) : null;
    }
}
