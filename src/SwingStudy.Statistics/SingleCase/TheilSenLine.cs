using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>A straight line through the medians of all pairwise slopes: resists single odd values.</summary>
/// <param name="Slope">Median of (yⱼ − yᵢ)/(tⱼ − tᵢ) over pairs with different times, with Sen's interval, in units of y per unit of time.</param>
/// <param name="Intercept">Median of y − slope · t, in units of y.</param>
/// <remarks>
/// Sources: Theil (1950), Proceedings of the Royal Netherlands Academy of Sciences 53; Sen (1968), JASA 63:1379–1389.
/// </remarks>
public sealed record TheilSenLine(Estimate Slope, Estimate Intercept)
{
    /// <summary>Method word of <see cref="Slope"/>.</summary>
    public const string SlopeMethod = "theil-sen-slope";

    /// <summary>Method word of <see cref="Intercept"/>.</summary>
    public const string InterceptMethod = "theil-sen-intercept";

    /// <summary>Fits the line.</summary>
    /// <remarks>
    /// Interval of the slope (Sen 1968): order statistics (N − C)/2 and (N + C)/2 + 1 of the N sorted slopes, C = z·√var(S), linear between
    /// order statistics, clamped to [1, N].
    /// </remarks>
    /// <param name="times">Times, any unit, any spacing, all finite.</param>
    /// <param name="values">One value a time, all finite.</param>
    /// <param name="confidence">Level of the interval, a share.</param>
    /// <returns>The line; undefined with fewer than two different times.</returns>
    /// <exception cref="ArgumentException">Lengths differ, a value is not finite, or the confidence is no share.</exception>
    public static TheilSenLine Fit(ReadOnlySpan<double> times, ReadOnlySpan<double> values, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var trend = MannKendallTrend.Of(times, values);
        var slopes = new List<double>();
        for (var i = 0; i < values.Length; i++)
        {
            for (var j = i + 1; j < values.Length; j++)
            {
                if (times[i] != times[j])
                    slopes.Add((values[j] - values[i]) / (times[j] - times[i]));
            }
        }

        if (slopes.Count == 0)
        {
            const string Reason = "needs values at two different times at least";
            return new TheilSenLine(Estimate.NotDefined(SlopeMethod, Reason), Estimate.NotDefined(InterceptMethod, Reason));
        }

        var sorted = slopes.ToArray();
        Array.Sort(sorted);
        if (!double.IsFinite(sorted[0]) || !double.IsFinite(sorted[^1]))
        {
            const string Reason = "a slope between two values is beyond the range of numbers";
            return new TheilSenLine(Estimate.NotDefined(SlopeMethod, Reason), Estimate.NotDefined(InterceptMethod, Reason));
        }

        var slope = MedianOfSorted(sorted);
        var rest = new double[values.Length];
        for (var i = 0; i < rest.Length; i++)
            rest[i] = values[i] - (slope * times[i]);
        var spread = Normal.Critical(confidence) * Math.Sqrt(trend.Variance);
        var low = OrderStatistic(sorted, (sorted.Length - spread) / 2);
        var high = OrderStatistic(sorted, ((sorted.Length + spread) / 2) + 1);
        return new TheilSenLine(
            new Estimate { Method = SlopeMethod, Value = slope, Interval = new Interval(low, high, confidence) },
            new Estimate { Method = InterceptMethod, Value = MedianOf(rest) });
    }

    /// <summary>The median of at least one value; sorts the array.</summary>
    internal static double MedianOf(double[] values)
    {
        Array.Sort(values);
        return MedianOfSorted(values);
    }

    private static double MedianOfSorted(double[] sorted)
    {
        var middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] / 2) + (sorted[middle] / 2);
    }

    private static double OrderStatistic(double[] sorted, double rank)
    {
        rank = Math.Clamp(rank, 1, sorted.Length);
        var whole = (int)rank;
        return whole == sorted.Length ? sorted[^1] : sorted[whole - 1] + ((rank - whole) * (sorted[whole] - sorted[whole - 1]));
    }
}
