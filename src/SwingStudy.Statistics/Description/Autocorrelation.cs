namespace SwingStudy.Statistics.Description;

/// <summary>Serial dependence of a series in order.</summary>
public static class Autocorrelation
{
    /// <summary>Lag-1 autocorrelation: Σ (y_t − m)(y_{t+1} − m) / Σ (y_t − m)².</summary>
    /// <remarks>
    /// Both sums use the mean of the whole series. Biased toward −1/n in short series.
    /// Source: Box, Jenkins and Reinsel (1994), Time Series Analysis, ch. 2; certified values: NIST StRD.
    /// </remarks>
    /// <param name="values">The series in time order, all finite.</param>
    /// <returns>A number from −1 to 1; null with fewer than two values or a series that never varies.</returns>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static double? Lag1(ReadOnlySpan<double> values)
    {
        var summary = Summary.Of(values);
        if (summary.Count < 2 || summary.SumOfSquares <= 0)
            return null;
        var origin = values[0];
        var total = new CompensatedSum();
        foreach (var x in values)
            total.Add((x - origin) / values.Length);
        var shift = total.Value;
        var products = new CompensatedSum();
        for (var i = 1; i < values.Length; i++)
            products.Add((values[i - 1] - origin - shift) * (values[i] - origin - shift));
        return products.Value / summary.SumOfSquares;
    }
}
