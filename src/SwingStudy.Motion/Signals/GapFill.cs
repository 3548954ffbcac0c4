namespace SwingStudy.Motion.Signals;

/// <summary>A signal whose short gaps are filled.</summary>
/// <remarks>
/// A gap is filled by a polynomial through the samples on both sides, as many on each as the gap is long and at least <see cref="LeastContext"/>:
/// least squares, because a spline through two noisy neighbours swings out. Gaps at the ends and gaps longer than the limit stay missing.
/// </remarks>
/// <param name="Values">The signal; NaN where it is still missing.</param>
/// <param name="FilledSamples">Samples that were filled.</param>
/// <param name="MissingSamples">Samples that stay missing.</param>
/// <param name="LongestFilled">Longest gap that was filled, in samples.</param>
public sealed record GapFill(double[] Values, int FilledSamples, int MissingSamples, int LongestFilled)
{
    private const int LeastContext = 6;
    private const int Degree = 5;
    private const int PlainDegree = 3;

    /// <summary>Fills gaps up to a limit.</summary>
    /// <param name="samples">The signal, NaN where it is missing.</param>
    /// <param name="limitSamples">Longest gap to fill.</param>
    public static GapFill Of(ReadOnlySpan<double> samples, int limitSamples)
    {
        var values = samples.ToArray();
        var (filled, missing, longest) = (0, 0, 0);
        for (var from = 0; from < samples.Length; from++)
        {
            if (!double.IsNaN(samples[from]))
                continue;
            var to = from;
            while (to < samples.Length && double.IsNaN(samples[to]))
                to++;
            if (to - from <= limitSamples && Fill(samples, values, from, to))
                (filled, longest) = (filled + to - from, Math.Max(longest, to - from));
            else
                missing += to - from;
            from = to;
        }

        return new GapFill(values, filled, missing, longest);
    }

    private static bool Fill(ReadOnlySpan<double> samples, double[] values, int from, int to)
    {
        var wanted = Math.Max(LeastContext, to - from);
        var (times, known) = (new List<double>(), new List<double>());
        var before = Gather(samples, from - 1, -1, wanted, times, known);
        var after = Gather(samples, to, 1, wanted, times, known);
        if (before == 0 || after == 0)
            return false;
        var degree = Math.Min(before, after) >= LeastContext ? Degree : Math.Min(PlainDegree, before + after - 1);
        var fit = PolynomialFit.Of([.. times], [.. known], degree);
        for (var i = from; i < to; i++)
            values[i] = fit.At(i);
        return true;
    }

    private static int Gather(ReadOnlySpan<double> samples, int from, int step, int wanted, List<double> times, List<double> known)
    {
        var count = 0;
        for (var i = from; i >= 0 && i < samples.Length && count < wanted && !double.IsNaN(samples[i]); i += step, count++)
        {
            times.Add(i);
            known.Add(samples[i]);
        }

        return count;
    }
}
