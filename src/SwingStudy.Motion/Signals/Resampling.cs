namespace SwingStudy.Motion.Signals;

/// <summary>The same signal at another rate.</summary>
public static class Resampling
{
    /// <summary>Share of the new rate above which nothing may be left before down-sampling; half of it would be the limit of the sampling theorem.</summary>
    private const double KeptShare = 0.4;

    private const int FilterOrder = 4;

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
