using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Geometry;

/// <summary>Parts of sampled curves.</summary>
public static class Span
{
    /// <summary>Mean of the samples between two times that are there; NaN when none is.</summary>
    public static double Mean(ReadOnlySpan<double> values, TimeAxis axis, double fromS, double toS)
    {
        var (sum, count) = (0.0, 0);
        for (var i = axis.From(fromS); i <= axis.To(toS); i++)
        {
            if (double.IsNaN(values[i]))
                continue;
            sum += values[i];
            count++;
        }

        return count > 0 ? sum / count : double.NaN;
    }

    /// <summary>Value at a time along a straight line between samples; NaN outside or beside a missing sample.</summary>
    public static double At(ReadOnlySpan<double> values, TimeAxis axis, double timeS) => Straight.At(values, axis.PositionOf(timeS));

    /// <summary>The highest sample between two times; null when none is there.</summary>
    public static Peak? Highest(ReadOnlySpan<double> values, TimeAxis axis, double fromS, double toS) => Peak.Highest(values, axis.From(fromS), axis.To(toS));

    /// <summary>The lowest sample between two times; null when none is there.</summary>
    public static Peak? Lowest(ReadOnlySpan<double> values, TimeAxis axis, double fromS, double toS) => Peak.Lowest(values, axis.From(fromS), axis.To(toS));

    /// <summary>The sample largest in size between two times, with its sign; null when none is there.</summary>
    public static Peak? Largest(ReadOnlySpan<double> values, TimeAxis axis, double fromS, double toS)
    {
        var (high, low) = (Highest(values, axis, fromS, toS), Lowest(values, axis, fromS, toS));
        return high is { } h && low is { } l && -l.Value > h.Value ? low : high;
    }

    /// <summary>Applies a function to each stretch without missing samples; shorter stretches become missing.</summary>
    /// <param name="values">The curve.</param>
    /// <param name="least">Shortest stretch the function can take.</param>
    /// <param name="change">From the samples of a stretch to as many samples.</param>
    public static double[] EachStretch(double[] values, int least, Func<double[], double[]> change)
    {
        var result = new double[values.Length];
        Array.Fill(result, double.NaN);
        foreach (var run in SampleRun.Where(values, least, (x, _) => !double.IsNaN(x)))
            change(values[run.From..(run.From + run.Count)]).CopyTo(result, run.From);
        return result;
    }

    /// <summary>Integral over time by trapezoids, with values at both ends read along straight lines; NaN when a sample is missing or outside.</summary>
    /// <param name="values">The curve.</param>
    /// <param name="axis">Its times.</param>
    /// <param name="fromS">Start.</param>
    /// <param name="toS">End.</param>
    public static double Integral(ReadOnlySpan<double> values, TimeAxis axis, double fromS, double toS)
    {
        var (time, value) = (fromS, At(values, axis, fromS));
        var sum = 0.0;
        for (var i = axis.From(fromS); i <= axis.To(toS); i++)
        {
            sum += (values[i] + value) / 2 * (axis.TimeOf(i) - time);
            (time, value) = (axis.TimeOf(i), values[i]);
        }

        return sum + ((At(values, axis, toS) + value) / 2 * (toS - time));
    }
}
