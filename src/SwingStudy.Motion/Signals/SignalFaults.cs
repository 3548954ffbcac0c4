namespace SwingStudy.Motion.Signals;

/// <summary>What goes wrong in recordings: clipped tops, lost samples, frozen values, slow drift.</summary>
public static class SignalFaults
{
    /// <summary>Runs in which the signal stays at its greatest or least value, as at the end of a sensor's range.</summary>
    /// <param name="samples">The signal.</param>
    /// <param name="least">Samples from which a run counts; one or two equal tops happen by rounding.</param>
    public static IReadOnlyList<SampleRun> Saturation(ReadOnlySpan<double> samples, int least = 3)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var x in samples)
        {
            if (!double.IsNaN(x))
                (low, high) = (Math.Min(low, x), Math.Max(high, x));
        }

        return high > low ? SampleRun.Where(samples, least, (x, _) => x == low || x == high) : [];
    }

    /// <summary>Runs of missing samples.</summary>
    public static IReadOnlyList<SampleRun> Dropouts(ReadOnlySpan<double> samples, int least = 1) => SampleRun.Where(samples, least, (x, _) => double.IsNaN(x));

    /// <summary>Runs in which every sample equals the one before: a sensor that has frozen, since noise never repeats for long.</summary>
    /// <param name="samples">The signal.</param>
    /// <param name="least">Repeats from which a run counts.</param>
    public static IReadOnlyList<SampleRun> Frozen(ReadOnlySpan<double> samples, int least) => SampleRun.Where(samples, least, (x, before) => x == before);

    /// <summary>Change per second of a signal that should stand still, by least squares; NaN with fewer than two samples.</summary>
    /// <param name="samples">The signal, missing samples left out.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    public static double DriftPerSecond(ReadOnlySpan<double> samples, double sampleRateHz)
    {
        var (times, values) = (new List<double>(), new List<double>());
        for (var i = 0; i < samples.Length; i++)
        {
            if (double.IsNaN(samples[i]))
                continue;
            times.Add(i / sampleRateHz);
            values.Add(samples[i]);
        }

        return times.Count < 2 ? double.NaN : StraightLine.Through([.. times], [.. values]).Slope;
    }
}
