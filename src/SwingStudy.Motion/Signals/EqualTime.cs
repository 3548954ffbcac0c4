namespace SwingStudy.Motion.Signals;

/// <summary>A curve at equal steps of time, so that curves of other rates and beginnings lie on each other.</summary>
public static class EqualTime
{
    /// <summary>The curve at equal steps, read from a shape-preserving cubic.</summary>
    /// <param name="samples">The curve; missing samples are left out of the cubic.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    /// <param name="firstTimeS">Time of the first sample.</param>
    /// <param name="fromS">Time of the first point, on the same clock.</param>
    /// <param name="stepS">Seconds from point to point.</param>
    /// <param name="count">Number of points.</param>
    /// <returns>The points; NaN where the curve does not reach or is missing.</returns>
    public static double[] Read(ReadOnlySpan<double> samples, double sampleRateHz, double firstTimeS, double fromS, double stepS, int count)
    {
        var curve = new CurveReader(samples, sampleRateHz, firstTimeS);
        var points = new double[count];
        for (var i = 0; i < count; i++)
            points[i] = curve.At(fromS + (i * stepS));
        return points;
    }
}
