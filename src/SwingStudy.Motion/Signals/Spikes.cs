namespace SwingStudy.Motion.Signals;

/// <summary>Samples that do not fit their neighbours.</summary>
/// <remarks>
/// A sample is a spike when it lies farther from the median of a window around it than a number of scaled median absolute deviations
/// (1.4826 MAD estimates a normal standard deviation). Windows are cut at the ends; decisions rest on the given data.
/// Source: Hampel (1974), J Am Stat Assoc 69:383; Davies and Gather (1993), J Am Stat Assoc 88:782.
/// </remarks>
/// <param name="Filtered">The signal with spikes replaced by the local median.</param>
/// <param name="Indices">Positions of the spikes.</param>
/// <param name="LocalMedian">Median around each sample.</param>
/// <param name="LocalScale">Scaled median absolute deviation around each sample.</param>
public sealed record Spikes(double[] Filtered, IReadOnlyList<int> Indices, double[] LocalMedian, double[] LocalScale)
{
    private const double NormalScale = 1.4826;

    /// <summary>Looks for spikes.</summary>
    /// <param name="samples">The signal; missing samples are passed over.</param>
    /// <param name="halfWindow">Samples on either side.</param>
    /// <param name="limit">How many scaled deviations are too far.</param>
    public static Spikes Of(ReadOnlySpan<double> samples, int halfWindow, double limit)
    {
        var (filtered, medians, scales) = (samples.ToArray(), new double[samples.Length], new double[samples.Length]);
        var indices = new List<int>();
        for (var i = 0; i < samples.Length; i++)
        {
            var (from, to) = (Math.Max(0, i - halfWindow), Math.Min(samples.Length, i + halfWindow + 1));
            (medians[i], scales[i]) = Middle(samples[from..to]);
            if (Math.Abs(samples[i] - medians[i]) > limit * scales[i])
            {
                filtered[i] = medians[i];
                indices.Add(i);
            }
        }

        return new Spikes(filtered, indices, medians, scales);
    }

    /// <summary>Modified z of every sample against the whole signal: 0.6745 (x − median) / MAD; above 3.5 in size is an outlier.</summary>
    /// <remarks>Source: Iglewicz and Hoaglin (1993), How to Detect and Handle Outliers.</remarks>
    /// <param name="samples">All finite.</param>
    public static double[] ModifiedZ(ReadOnlySpan<double> samples)
    {
        var (median, scale) = Middle(samples);
        var z = new double[samples.Length];
        for (var i = 0; i < z.Length; i++)
            z[i] = 0.6745 * (samples[i] - median) / (scale / NormalScale);
        return z;
    }

    /// <summary>Median and scaled median absolute deviation of the samples that are there.</summary>
    public static (double Median, double Scale) Middle(ReadOnlySpan<double> samples)
    {
        double[] present = [.. samples.ToArray().Where(x => !double.IsNaN(x))];
        var median = Median(present);
        return (median, NormalScale * Median([.. present.Select(x => Math.Abs(x - median))]));
    }

    private static double Median(double[] values)
    {
        if (values.Length == 0)
            return double.NaN;
        Array.Sort(values);
        var middle = values.Length / 2;
        return values.Length % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }
}
