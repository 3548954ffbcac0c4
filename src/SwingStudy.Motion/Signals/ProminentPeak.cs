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
                var before = LowestBefore(samples, at);

                // What does not stand out on one side is not looked at on the other: nearly all maxima are ripples.
                if (samples[at] - before >= leastProminence && samples[at] - Math.Max(before, LowestBehind(samples, at)) is var prominence && prominence >= leastProminence)
                    found.Add(new ProminentPeak(at, prominence));
            }

            i = end;
        }

        return found;
    }

    /// <summary>The lowest sample from a position back to a higher one or the start.</summary>
    private static double LowestBefore(ReadOnlySpan<double> samples, int at)
    {
        var top = samples[at];
        var lowest = top;
        var before = samples[..at];
        for (var i = before.Length - 1; i >= 0; i--)
        {
            var sample = before[i];
            if (sample > top)
                break;
            if (sample < lowest)
                lowest = sample;
        }

        return lowest;
    }

    /// <summary>The lowest sample from a position on to a higher one or the end.</summary>
    private static double LowestBehind(ReadOnlySpan<double> samples, int at)
    {
        var top = samples[at];
        var lowest = top;
        foreach (var sample in samples[(at + 1)..])
        {
            if (sample > top)
                break;
            if (sample < lowest)
                lowest = sample;
        }

        return lowest;
    }
}
