using SwingStudy.Motion.Geometry;

namespace SwingStudy.Motion.Forces;

/// <summary>Body weight from a time in which the player stands still.</summary>
/// <param name="WeightN">Mean summed vertical force, newtons.</param>
/// <param name="ScatterN">Its standard deviation.</param>
/// <param name="FromS">Start of the time.</param>
/// <param name="ToS">Its end.</param>
public sealed record QuietStanding(double WeightN, double ScatterN, double FromS, double ToS)
{
    /// <summary>The stillest stretch of a length: that with the least standard deviation.</summary>
    /// <param name="vertical">Summed vertical force.</param>
    /// <param name="axis">Its times.</param>
    /// <param name="seconds">Length of the stretch; the whole recording when that is shorter.</param>
    /// <param name="fromS">Start of the time that is searched.</param>
    /// <param name="toS">Its end.</param>
    /// <returns>The stretch; null when fewer than two samples are there or one is missing everywhere.</returns>
    public static QuietStanding? Stillest(ReadOnlySpan<double> vertical, TimeAxis axis, double seconds, double fromS, double toS)
    {
        var (first, last) = (axis.From(fromS), axis.To(toS));
        var length = Math.Min((int)Math.Round(seconds * axis.SampleRateHz) + 1, last - first + 1);
        if (length < 2)
            return null;
        QuietStanding? best = null;
        // Stretches overlap by nine tenths: finer steps change nothing that noise does not.
        for (var from = first; from + length - 1 <= last; from += Math.Max(1, length / 10))
        {
            var (mean, scatter) = Moments(vertical.Slice(from, length));
            if (!double.IsNaN(scatter) && (best is null || scatter < best.ScatterN))
                best = new QuietStanding(mean, scatter, axis.TimeOf(from), axis.TimeOf(from + length - 1));
        }

        return best;
    }

    private static (double Mean, double Scatter) Moments(ReadOnlySpan<double> values)
    {
        var (mean, squares) = (0.0, 0.0);
        foreach (var x in values)
            mean += x / values.Length;
        foreach (var x in values)
            squares += (x - mean) * (x - mean);
        return (mean, Math.Sqrt(squares / (values.Length - 1)));
    }
}
