namespace SwingStudy.Pipeline.Screen.Rules;

/// <summary>Middle and scatter that single wild values do not move.</summary>
internal static class Middle
{
    /// <summary>The median; of an even number of values the mean of the two middle ones.</summary>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values];
        if (sorted.Length == 0)
            throw new ArgumentException("A median needs at least one value.", nameof(values));
        Array.Sort(sorted);
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    /// <summary>The median of the distances from <paramref name="middle"/>.</summary>
    public static double MedianDistance(IEnumerable<double> values, double middle) => Median(values.Select(value => Math.Abs(value - middle)));
}
