using SwingStudy.Motion.Geometry;

namespace SwingStudy.Motion.Signals;

/// <summary>Where a curve is highest when its peak is broad: the top of a cubic through many samples, which noise moves less than that of three.</summary>
/// <remarks>
/// Around a broad peak neighbouring samples differ by less than noise, and the vertex of three of them wanders by several samples. The cubic takes the
/// peak's lopsidedness along. Timing finer than a sample rests on that shape. Common practice, no source.
/// </remarks>
public static class BroadPeak
{
    private const int Degree = 3;
    private const int LeastSamples = 7;

    /// <summary>Time and height of the highest point between two times; null when no sample is there.</summary>
    /// <param name="values">The curve, smoothed.</param>
    /// <param name="axis">Its times.</param>
    /// <param name="fromS">Start of the search; the cubic sees no sample before it.</param>
    /// <param name="toS">End of the search, for instance impact; the cubic sees no sample after it.</param>
    /// <param name="halfS">Time on either side of the highest sample over which the cubic is laid.</param>
    public static (double TimeS, double Value)? Highest(ReadOnlySpan<double> values, TimeAxis axis, double fromS, double toS, double halfS)
    {
        if (Span.Highest(values, axis, fromS, toS) is not { } sample)
            return null;
        var (first, last) = (sample.Index, sample.Index);
        var (earliest, latest) = (axis.From(Math.Max(fromS, axis.TimeOf(sample.Index) - halfS)), axis.To(Math.Min(toS, axis.TimeOf(sample.Index) + halfS)));
        while (first > earliest && !double.IsNaN(values[first - 1]))
            first--;
        while (last < latest && !double.IsNaN(values[last + 1]))
            last++;
        var own = (Math.Clamp(axis.TimeOf(sample.Position), fromS, toS), sample.Value);
        if (last - first + 1 < LeastSamples)
            return own;
        var centre = axis.TimeOf(sample.Index);
        double[] times = [.. Enumerable.Range(first, last - first + 1).Select(i => axis.TimeOf(i) - centre)];
        var cubic = PolynomialFit.Of(times, values.Slice(first, times.Length), Degree);
        // The slope a + b x + c x² falls through zero at the top.
        var (a, b, c) = (cubic.At(0, 1), cubic.At(0, 2), cubic.At(0, 3) / 2);
        var root = (b * b) - (4 * a * c);
        var top = 2 * a / (Math.Sqrt(Math.Max(0, root)) - b);
        return root <= 0 || !(top >= times[0] && top <= times[^1]) ? own : (centre + top, cubic.At(top));
    }
}
