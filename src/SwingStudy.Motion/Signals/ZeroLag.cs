using System.Buffers;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace SwingStudy.Motion.Signals;

/// <summary>Filtering forward and backward, so that no lag remains.</summary>
/// <remarks>
/// The signal is continued at both ends, each pass starts in the steady state of its first sample, and the continuation is cut off again.
/// Source: Gustafsson (1996), IEEE Trans Signal Process 44:988, for the problem; the rule is that of SciPy's <c>filtfilt</c>, whose values it gives.
/// </remarks>
public static class ZeroLag
{
    /// <summary>Samples by which general filtering functions continue a signal: three times the number of weights.</summary>
    public static int UsualPad(int order) => 3 * (order + 1);

    /// <summary>The filtered signal, as long as the given one.</summary>
    /// <param name="samples">All finite.</param>
    /// <param name="filter">The filter of one pass.</param>
    /// <param name="padding">How the ends are continued.</param>
    /// <param name="padSamples">By how many samples; fewer than the signal has.</param>
    /// <exception cref="ArgumentException">The signal is not longer than the continuation.</exception>
    public static double[] Filter(ReadOnlySpan<double> samples, SectionCascade filter, Padding padding, int padSamples)
    {
        var pad = Pad(samples.Length, padding, padSamples);
        if (samples.IsEmpty)
            return [];
        var buffer = new double[samples.Length + (2 * pad)];
        samples.CopyTo(buffer.AsSpan(pad));
        for (var i = 1; i <= pad; i++)
        {
            buffer[pad - i] = Beyond(samples[0], samples[i], padding);
            buffer[pad + samples.Length - 1 + i] = Beyond(samples[^1], samples[^(i + 1)], padding);
        }

        filter.Pass(buffer, buffer[0]);
        Array.Reverse(buffer);
        filter.Pass(buffer, buffer[0]);
        Array.Reverse(buffer);
        return buffer.AsSpan(pad, samples.Length).ToArray();
    }

    /// <summary>Several signals of equal length, filtered as each would be alone, several times as fast.</summary>
    /// <inheritdoc cref="Filter(ReadOnlySpan{double}, SectionCascade, Padding, int)"/>
    /// <param name="signals">The signals, all finite.</param>
    /// <param name="filter">The filter of one pass.</param>
    /// <param name="padding">How the ends are continued.</param>
    /// <param name="padSamples">By how many samples; fewer than the signals have.</param>
    /// <exception cref="ArgumentException">The signals differ in length or are not longer than the continuation.</exception>
    public static double[][] Filter(IReadOnlyList<double[]> signals, SectionCascade filter, Padding padding, int padSamples)
    {
        var filtered = new double[signals.Count][];
        if (signals.Count == 0)
            return filtered;
        var length = signals[0].Length;
        if (signals.Any(signal => signal.Length != length))
            throw new ArgumentException("Signals that are filtered together are equally long.", nameof(signals));
        var pad = Pad(length, padding, padSamples);
        if (length == 0)
            return [.. signals.Select(_ => Array.Empty<double>())];
        var rented = ArrayPool<double>.Shared.Rent((length + (2 * pad)) * Vector256<double>.Count);
        var buffer = MemoryMarshal.Cast<double, Vector256<double>>(rented.AsSpan())[..(length + (2 * pad))];
        for (var from = 0; from < filtered.Length; from += Vector256<double>.Count)
        {
            for (var i = from; i < Math.Min(from + Vector256<double>.Count, filtered.Length); i++)
                filtered[i] = new double[length];
            Four(signals, from, filtered, filter, padding, pad, buffer);
        }

        ArrayPool<double>.Shared.Return(rented);
        return filtered;
    }

    /// <summary>Filters up to four signals; the last one stands in for those that lack.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Four(
        IReadOnlyList<double[]> signals, int from, double[][] filtered, SectionCascade filter, Padding padding, int pad, Span<Vector256<double>> buffer)
    {
        var last = filtered.Length - 1;
        double[] a = signals[from], b = signals[Math.Min(from + 1, last)], c = signals[Math.Min(from + 2, last)], d = signals[Math.Min(from + 3, last)];
        var inside = buffer.Slice(pad, a.Length);
        for (var i = 0; i < inside.Length; i++)
            inside[i] = Vector256.Create(a[i], b[i], c[i], d[i]);
        for (var i = 1; i <= pad; i++)
        {
            buffer[pad - i] = Beyond(inside[0], inside[i], padding);
            buffer[pad + inside.Length - 1 + i] = Beyond(inside[^1], inside[^(i + 1)], padding);
        }

        filter.Pass(buffer, buffer[0]);
        buffer.Reverse();
        filter.Pass(buffer, buffer[0]);
        buffer.Reverse();
        (a, b, c, d) = (filtered[from], filtered[Math.Min(from + 1, last)], filtered[Math.Min(from + 2, last)], filtered[Math.Min(from + 3, last)]);
        for (var i = 0; i < inside.Length; i++)
        {
            var (lower, upper) = (inside[i].GetLower(), inside[i].GetUpper());
            (a[i], b[i], c[i], d[i]) = (lower.ToScalar(), lower.GetElement(1), upper.ToScalar(), upper.GetElement(1));
        }
    }

    private static int Pad(int length, Padding padding, int padSamples)
    {
        var pad = padding == Padding.None ? 0 : padSamples;
        return length > pad ? pad : throw new ArgumentException($"A signal of {length} samples cannot be continued by {pad}.", nameof(padSamples));
    }

    private static Vector256<double> Beyond(Vector256<double> end, Vector256<double> inside, Padding padding) => padding switch
    {
        Padding.Odd => (2 * end) - inside,
        Padding.Even => inside,
        _ => end,
    };

    private static double Beyond(double end, double inside, Padding padding) => padding switch
    {
        Padding.Odd => (2 * end) - inside,
        Padding.Even => inside,
        _ => end,
    };
}
