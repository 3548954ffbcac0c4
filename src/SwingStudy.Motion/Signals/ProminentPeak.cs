namespace SwingStudy.Motion.Signals;

/// <summary>A local maximum and how far it stands out.</summary>
/// <param name="Index">Its position; the middle of a level top.</param>
/// <param name="Prominence">Its height over the higher of the two lowest points that lie between it and a higher sample, or the end, on either side.</param>
public readonly record struct ProminentPeak(int Index, double Prominence)
{
    /// <summary>Local maxima that stand out by at least an amount, in order of time.</summary>
    /// <remarks>A sample at either end is none. Source of the definition: topographic prominence; values agree with SciPy's <c>find_peaks</c>.</remarks>
    /// <param name="samples">All finite.</param>
    /// <param name="leastProminence">In the signal's unit.</param>
    public static IReadOnlyList<ProminentPeak> In(ReadOnlySpan<double> samples, double leastProminence)
    {
        var found = new List<ProminentPeak>();
        for (var i = 1; i < samples.Length - 1; i++)
        {
            if (!(samples[i] > samples[i - 1]))
                continue;
            var end = i;
            while (end < samples.Length - 1 && samples[end + 1] == samples[i])
                end++;
            if (end < samples.Length - 1 && samples[end + 1] < samples[i])
            {
                var at = (i + end) / 2;
                var prominence = samples[at] - Math.Max(LowestUntilHigher(samples, at, -1), LowestUntilHigher(samples, at, 1));
                if (prominence >= leastProminence)
                    found.Add(new ProminentPeak(at, prominence));
            }

            i = end;
        }

        return found;
    }

    private static double LowestUntilHigher(ReadOnlySpan<double> samples, int at, int step)
    {
        var lowest = samples[at];
        for (var i = at + step; i >= 0 && i < samples.Length && samples[i] <= samples[at]; i += step)
            lowest = Math.Min(lowest, samples[i]);
        return lowest;
    }
}
