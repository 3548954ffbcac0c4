using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Quantiles of sorted values.</summary>
internal static class SortedQuantile
{
    /// <summary>The quantile at <paramref name="p"/> in (0, 1) of at least one sorted value.</summary>
    public static double At(ReadOnlySpan<double> sorted, double p, QuantileRule rule)
    {
        var count = sorted.Length;
        var rank = rule == QuantileRule.HyndmanFan7 ? ((count - 1) * p) + 1 : (count + 1) * p;
        var whole = (int)Math.Floor(rank + 1e-12);
        if (whole < 1)
            return sorted[0];
        if (whole >= count)
            return sorted[^1];
        double low = sorted[whole - 1], high = sorted[whole], fraction = rank - whole;
        if (fraction <= 1e-12 * count || low == high)
            return low;
        if (rule == QuantileRule.NormalInterpolation)
        {
            var from = Normal.Quantile(whole / (count + 1.0));
            var to = Normal.Quantile((whole + 1) / (count + 1.0));
            fraction = (Normal.Quantile(p) - from) / (to - from);
        }

        return low + (fraction * (high - low));
    }
}
