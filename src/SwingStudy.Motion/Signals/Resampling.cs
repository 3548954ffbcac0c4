using SwingStudy.Motion.Geometry;

namespace SwingStudy.Motion.Signals;

/// <summary>The same signal at another rate.</summary>
public static class Resampling
{
    /// <summary>Share of the new rate above which nothing may be left before down-sampling; half of it would be the limit of the sampling theorem.</summary>
    private const double KeptShare = 0.4;

    private const int FilterOrder = 4;
    private const int FewestForSpline = 4;

    /// <summary>A curve at the times of another axis, by a not-a-knot cubic spline through each stretch without missing samples; NaN outside of these.</summary>
    /// <remarks>For a curve that was low-passed well below half of either rate: what the other axis cannot carry is not removed here.</remarks>
    /// <param name="samples">The curve; NaN where lost.</param>
    /// <param name="own">Its times.</param>
    /// <param name="wanted">The times at which it is read.</param>
    public static double[] At(ReadOnlySpan<double> samples, TimeAxis own, TimeAxis wanted)
    {
        var result = new double[wanted.Count];
        Array.Fill(result, double.NaN);
        foreach (var run in SampleRun.Where(samples, FewestForSpline, (x, _) => !double.IsNaN(x)))
        {
            var times = new double[run.Count];
            for (var i = 0; i < times.Length; i++)
                times[i] = i;
            var curve = PiecewiseCubic.NotAKnot(times, samples.Slice(run.From, run.Count));
            for (var i = wanted.From(own.TimeOf(run.From)); i <= wanted.To(own.TimeOf(run.From + run.Count - 1)); i++)
                result[i] = curve.At(Math.Clamp(own.PositionOf(wanted.TimeOf(i)) - run.From, 0, run.Count - 1));
        }

        return result;
    }

    /// <summary>Samples at a new rate from the same first moment on. Before down-sampling what the new rate cannot carry is removed.</summary>
    /// <remarks>
    /// Between samples a not-a-knot cubic spline is read. Up-sampling adds no information: timing stays as fine as the rate at which was measured.
    /// Source: Oppenheim and Schafer (2010), Discrete-Time Signal Processing, ch. 4, for the low-pass before down-sampling.
    /// </remarks>
    /// <param name="samples">All finite, at least four.</param>
    /// <param name="sampleRateHz">Rate of the samples.</param>
    /// <param name="newRateHz">Wanted rate.</param>
    public static double[] To(ReadOnlySpan<double> samples, double sampleRateHz, double newRateHz)
    {
        var kept = newRateHz < sampleRateHz ? new LowPass(KeptShare * newRateHz, FilterOrder).Apply(samples, sampleRateHz) : samples.ToArray();
        var times = new double[kept.Length];
        for (var i = 0; i < times.Length; i++)
            times[i] = i;
        var curve = PiecewiseCubic.NotAKnot(times, kept);
        var count = (int)Math.Floor(((kept.Length - 1) * newRateHz / sampleRateHz) + 1e-9) + 1;
        var result = new double[count];
        for (var i = 0; i < count; i++)
            result[i] = curve.At(i * sampleRateHz / newRateHz);
        return result;
    }
}
