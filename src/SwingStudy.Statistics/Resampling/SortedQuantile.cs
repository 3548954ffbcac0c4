using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Quantiles of sorted values.</summary>
internal static class SortedQuantile
{
    /// <summary>The same quantile of values in any order, which are reordered.</summary>
    public static double AtUnsorted(Span<double> values, double p, QuantileRule rule)
    {
        // Only the two order statistics around the rank are read.
        var first = Math.Clamp(Whole(Rank(values.Length, p, rule)) - 1, 0, values.Length - 1);
        Selection.Place(values, first);
        var next = first + 1;
        for (var i = next + 1; i < values.Length; i++)
        {
            if (values[i] < values[next])
                (values[i], values[next]) = (values[next], values[i]);
        }

        return At(values, p, rule);
    }

    private static int Whole(double rank) => (int)Math.Floor(rank + 1e-12);

    private static double Rank(int count, double p, QuantileRule rule) => rule == QuantileRule.HyndmanFan7 ? ((count - 1) * p) + 1 : (count + 1) * p;

    /// <summary>The quantile at <paramref name="p"/> in (0, 1) of at least one sorted value.</summary>
    public static double At(ReadOnlySpan<double> sorted, double p, QuantileRule rule)
    {
        var count = sorted.Length;
        var rank = Rank(count, p, rule);
        var whole = Whole(rank);
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
