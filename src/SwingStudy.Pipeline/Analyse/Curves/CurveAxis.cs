using SwingStudy.Motion.Signals;

namespace SwingStudy.Pipeline.Analyse.Curves;

/// <summary>The axis on which all curves of one channel of a player lie on each other.</summary>
/// <param name="Name">The word in the <c>axis</c> column.</param>
/// <param name="First">Place of the first point.</param>
/// <param name="Step">Distance from point to point.</param>
/// <param name="Count">Number of points.</param>
internal sealed record CurveAxis(string Name, double First, double Step, int Count)
{
    /// <summary>0 start of the swing, 100 top, 200 impact: the same moment of the movement in each swing.</summary>
    public const string SwingPhases = "swing-phases";

    /// <summary>Milliseconds from impact.</summary>
    public const string Milliseconds = "ms-from-impact";

    /// <summary>Share of the curves that must lie on an axis for it to serve; the others are left out and counted.</summary>
    private const double ServingShare = 0.8;

    // Movements hold little above 20 Hz, so that points 5 ms apart lose nothing.
    private const double StepMs = 5;
    private const double EarliestMs = -1500;
    private const double LatestMs = 500;
    private const double ShortestMs = 100;

    /// <summary>The axis of phases, two of 100 parts each.</summary>
    public static CurveAxis Phases { get; } = new(SwingPhases, 0, 1, PhaseTime.Points);

    /// <summary>
    /// Lays curves of all phases together on one axis: that of the swing's phases where at least four in five have their events and reach from start to
    /// impact, else milliseconds around impact as far as four in five reach.
    /// </summary>
    /// <returns>The axis, and each curve at its points, null where it has gaps there, does not reach over the axis, or lacks an event; no axis where
    /// that would be less than a tenth of a second.</returns>
    public static (CurveAxis? Axis, IReadOnlyList<double[]?> Points) Lay(IReadOnlyList<SwingCurve> curves)
    {
        var needed = (int)Math.Ceiling(ServingShare * curves.Count);
        double[]?[] onPhases = [.. curves.Select(Phases.Lay)];
        if (curves.Count > 0 && onPhases.Count(points => points is not null) >= needed)
            return (Phases, onPhases);
        return AroundImpact(curves, needed) is { } axis ? (axis, [.. curves.Select(axis.Lay)]) : (null, new double[]?[curves.Count]);
    }

    /// <summary>Place of a point on the axis.</summary>
    public double PlaceOf(int point) => First + (point * Step);

    private static CurveAxis? AroundImpact(IReadOnlyList<SwingCurve> curves, int needed)
    {
        var reaches = curves.Select(curve => curve.Reach).Where(reach => !double.IsNaN(reach.From)).ToList();
        if (reaches.Count < needed || reaches.Count == 0)
            return null;
        var from = Math.Max(EarliestMs, 1000 * reaches.Select(reach => reach.From).Order().ElementAt(needed - 1));
        var to = Math.Min(LatestMs, 1000 * reaches.Select(reach => reach.To).OrderDescending().ElementAt(needed - 1));
        var first = Math.Ceiling((from / StepMs) - 1e-9) * StepMs;
        var steps = (int)Math.Floor(((to - first) / StepMs) + 1e-9);
        return steps * StepMs < ShortestMs ? null : new CurveAxis(Milliseconds, first, StepMs, steps + 1);
    }

    private double[]? Lay(SwingCurve curve)
    {
        if (Name == SwingPhases && !curve.Events.AreInOrder)
            return null;
        var points = Name == SwingPhases
            ? PhaseTime.Normalise(curve.Samples, curve.SampleRateHz, curve.FirstTimeS, curve.Events.Start, curve.Events.Top, curve.Events.Impact)
            : EqualTime.Read(curve.Samples, curve.SampleRateHz, curve.FirstTimeS, First / 1000, Step / 1000, Count);
        return Array.Exists(points, double.IsNaN) ? null : points;
    }
}
