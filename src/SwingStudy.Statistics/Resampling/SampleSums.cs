namespace SwingStudy.Statistics.Resampling;

/// <summary>Sum and sum of squares of a sample.</summary>
internal readonly record struct SampleSums(double Sum, double Squares, int Count)
{
    public static SampleSums Of(double[] values) => new(values.Sum(), values.Sum(value => value * value), values.Length);

    public SampleSums Without(double value) => new(Sum - value, Squares - (value * value), Count - 1);

    /// <summary>Difference of means over the pooled standard deviation; NaN when nothing is left of the scatter but rounding.</summary>
    public static double Ratio(SampleSums x, SampleSums y)
    {
        double meanX = x.Sum / x.Count, meanY = y.Sum / y.Count;
        var within = x.Squares - (x.Sum * meanX) + y.Squares - (y.Sum * meanY);
        return within > 1e-14 * (x.Squares + y.Squares) ? (meanY - meanX) / Math.Sqrt(within / (x.Count + y.Count - 2)) : double.NaN;
    }
}
