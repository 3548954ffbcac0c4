namespace SwingStudy.Motion.Signals;

/// <summary>Cut-off from what filtering removes.</summary>
/// <remarks>
/// The root mean square of (raw − filtered) is drawn over cut-offs; where only noise is left it falls along a straight line, whose intercept at 0 Hz is
/// the noise's root mean square. The cut-off is the first at which the residual has fallen to that intercept, linear between the given cut-offs.
/// Suits movement better than forces. Source: Winter (2009), Biomechanics and Motor Control of Human Movement, ch. 3.
/// </remarks>
/// <param name="ResidualRms">Root mean square residual of each cut-off, in the signal's unit.</param>
/// <param name="TailSlope">Slope of the straight line, per hertz.</param>
/// <param name="TailIntercept">Its value at 0 Hz: the noise.</param>
/// <param name="TailRSquared">How straight the tail is, 0 to 1.</param>
/// <param name="CutoffHz">The chosen cut-off; null when the residual never falls to the intercept.</param>
public sealed record ResidualAnalysis(
    IReadOnlyList<double> ResidualRms, double TailSlope, double TailIntercept, double TailRSquared, double? CutoffHz)
{
    /// <summary>Analyses one signal.</summary>
    /// <param name="samples">The raw signal, all finite.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    /// <param name="cutoffsHz">Cut-offs to try, rising, below half the rate.</param>
    /// <param name="tailFromHz">The straight line is fitted from here on; at least two cut-offs.</param>
    /// <param name="order">Order of each pass; cut-offs are those of each pass.</param>
    /// <exception cref="ArgumentException">Fewer than two cut-offs lie in the tail.</exception>
    public static ResidualAnalysis Of(ReadOnlySpan<double> samples, double sampleRateHz, IReadOnlyList<double> cutoffsHz, double tailFromHz, int order = 2)
    {
        var residuals = new double[cutoffsHz.Count];
        for (var i = 0; i < residuals.Length; i++)
            residuals[i] = Rms(samples, new LowPass(cutoffsHz[i], order, PassCorrection.EachPass).Apply(samples, sampleRateHz));
        int[] tail = [.. Enumerable.Range(0, residuals.Length).Where(i => cutoffsHz[i] >= tailFromHz)];
        if (tail.Length < 2)
            throw new ArgumentException("The tail needs two cut-offs.", nameof(tailFromHz));
        var line = StraightLine.Through([.. tail.Select(i => cutoffsHz[i])], [.. tail.Select(i => residuals[i])]);
        return new ResidualAnalysis(residuals, line.Slope, line.Intercept, line.RSquared, Crossing(cutoffsHz, residuals, line.Intercept));
    }

    private static double? Crossing(IReadOnlyList<double> cutoffs, double[] residuals, double level)
    {
        for (var i = 1; i < residuals.Length; i++)
        {
            if (residuals[i - 1] > level && residuals[i] <= level)
                return cutoffs[i - 1] + ((cutoffs[i] - cutoffs[i - 1]) * (residuals[i - 1] - level) / (residuals[i - 1] - residuals[i]));
        }

        return null;
    }

    private static double Rms(ReadOnlySpan<double> raw, ReadOnlySpan<double> filtered)
    {
        var sum = 0.0;
        for (var i = 0; i < raw.Length; i++)
            sum += (raw[i] - filtered[i]) * (raw[i] - filtered[i]);
        return Math.Sqrt(sum / raw.Length);
    }
}
