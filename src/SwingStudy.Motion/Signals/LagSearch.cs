namespace SwingStudy.Motion.Signals;

/// <summary>By how much one signal comes later than another like it.</summary>
/// <remarks>
/// Means are removed; r(lag) = Σ y(t + lag) x(t) / √(Σ x² Σ y²) over the whole signals, so that large lags are drawn to zero. The parabola
/// through the maximum and its neighbours refines the lag. Source: Bendat and Piersol (2010), Random Data, ch. 8.
/// </remarks>
/// <param name="Lag">Lag of the greatest correlation in samples; positive = the second signal comes later.</param>
/// <param name="Correlation">That correlation.</param>
/// <param name="Offset">Refinement, in samples.</param>
/// <param name="PeakCorrelation">Height of the parabola.</param>
public sealed record LagSearch(int Lag, double Correlation, double Offset, double PeakCorrelation)
{
    /// <summary>Lag between samples.</summary>
    public double FineLag => Lag + Offset;

    /// <summary>Finds the lag.</summary>
    /// <param name="first">The earlier signal, all finite.</param>
    /// <param name="second">The later one, as long.</param>
    /// <param name="maximumLag">Largest lag to look at, in samples.</param>
    public static LagSearch Between(ReadOnlySpan<double> first, ReadOnlySpan<double> second, int maximumLag)
    {
        var correlations = Correlations(first, second, maximumLag);
        var peak = Peak.Highest(correlations)!.Value;
        return new LagSearch(peak.Index - maximumLag, peak.Sample, peak.Offset, peak.Value);
    }

    /// <summary>The correlation at each lag from −<paramref name="maximumLag"/> to +<paramref name="maximumLag"/>.</summary>
    public static double[] Correlations(ReadOnlySpan<double> first, ReadOnlySpan<double> second, int maximumLag)
    {
        if (first.Length != second.Length || maximumLag >= first.Length)
            throw new ArgumentException("Both signals must be equally long and longer than the largest lag.", nameof(second));
        double[] x = Centred(first), y = Centred(second);
        var scale = Math.Sqrt(Products(x, x, 0) * Products(y, y, 0));
        var result = new double[(2 * maximumLag) + 1];
        for (var lag = -maximumLag; lag <= maximumLag; lag++)
            result[lag + maximumLag] = Products(x, y, lag) / scale;
        return result;
    }

    private static double Products(double[] x, double[] y, int lag)
    {
        var sum = 0.0;
        for (var t = Math.Max(0, -lag); t < x.Length && t + lag < y.Length; t++)
            sum += y[t + lag] * x[t];
        return sum;
    }

    private static double[] Centred(ReadOnlySpan<double> values)
    {
        var mean = 0.0;
        foreach (var x in values)
            mean += x / values.Length;
        var result = new double[values.Length];
        for (var i = 0; i < result.Length; i++)
            result[i] = values[i] - mean;
        return result;
    }
}
