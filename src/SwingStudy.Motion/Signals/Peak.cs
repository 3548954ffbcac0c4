namespace SwingStudy.Motion.Signals;

/// <summary>The largest sample of a signal, and where between samples the peak lies.</summary>
/// <param name="Index">Position of the largest sample.</param>
/// <param name="Sample">Its value.</param>
/// <param name="Offset">Where the top of the parabola through it and its neighbours lies, in samples from it, −0.5 to 0.5; 0 at the ends.</param>
/// <param name="Value">Height of the parabola there.</param>
public readonly record struct Peak(int Index, double Sample, double Offset, double Value)
{
    /// <summary>Position between samples.</summary>
    public double Position => Index + Offset;

    /// <summary>The largest sample from one position to another, missing samples left out.</summary>
    /// <remarks>Vertex of the parabola through three samples: offset = (l − r) / (2 (l − 2 m + r)). Timing finer than a sample rests on that shape.</remarks>
    /// <param name="samples">The signal.</param>
    /// <param name="from">First position.</param>
    /// <param name="to">Last position, included.</param>
    /// <returns>The peak; null when no sample is there.</returns>
    public static Peak? Highest(ReadOnlySpan<double> samples, int from, int to)
    {
        var at = LargestAt(samples, from, to, 1);
        return at < 0 ? null : Refined(samples, at, 1);
    }

    /// <summary>The largest sample of the whole signal.</summary>
    public static Peak? Highest(ReadOnlySpan<double> samples) => Highest(samples, 0, samples.Length - 1);

    /// <summary>The smallest sample from one position to another, with its own value.</summary>
    /// <inheritdoc cref="Highest(ReadOnlySpan{double}, int, int)"/>
    public static Peak? Lowest(ReadOnlySpan<double> samples, int from, int to)
    {
        var at = LargestAt(samples, from, to, -1);
        if (at < 0)
            return null;
        var peak = Refined(samples, at, -1);
        return peak with { Sample = -peak.Sample, Value = -peak.Value };
    }

    /// <summary>Position of the first largest of the samples times a sign; -1 where all are missing.</summary>
    private static int LargestAt(ReadOnlySpan<double> samples, int from, int to, double sign)
    {
        var first = Math.Clamp(from, 0, samples.Length);
        var searched = samples[first..Math.Max(first, Math.Min(to, samples.Length - 1) + 1)];
        var (at, largest) = (-1, double.NegativeInfinity);
        for (var i = 0; i < searched.Length; i++)
        {
            var sample = sign * searched[i];
            if (sample > largest)
                (at, largest) = (first + i, sample);
        }

        return at;
    }

    private static Peak Refined(ReadOnlySpan<double> samples, int at, double sign)
    {
        var middle = sign * samples[at];
        if (at == 0 || at == samples.Length - 1 || double.IsNaN(samples[at - 1]) || double.IsNaN(samples[at + 1]))
            return new Peak(at, middle, 0, middle);
        var (left, right) = (sign * samples[at - 1], sign * samples[at + 1]);
        var bend = left - (2 * middle) + right;
        if (!(bend < 0) || left > middle || right > middle)
            return new Peak(at, middle, 0, middle);
        var offset = (left - right) / (2 * bend);
        return new Peak(at, middle, offset, middle - (0.25 * (left - right) * offset));
    }
}
