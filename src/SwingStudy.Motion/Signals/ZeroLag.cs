using System.Buffers;

namespace SwingStudy.Motion.Signals;

/// <summary>Filtering forward and backward, so that no lag remains.</summary>
/// <remarks>
/// The signal is continued at both ends, each pass starts in the steady state of its first sample, and the continuation is cut off again.
/// Source: Gustafsson (1996), IEEE Trans Signal Process 44:988, for the problem; the rule is that of SciPy's <c>filtfilt</c>, whose values it gives.
/// </remarks>
public static class ZeroLag
{
    /// <summary>Signals that are filtered at a time.</summary>
    private const int SideBySide = 4;

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
        var rented = ArrayPool<double>.Shared.Rent((length + (2 * pad)) * SideBySide);
        for (var from = 0; from < filtered.Length; from += SideBySide)
        {
            for (var i = from; i < Math.Min(from + SideBySide, filtered.Length); i++)
                filtered[i] = GC.AllocateUninitializedArray<double>(length);
            Four(signals, from, filtered, filter, padding, pad, rented.AsSpan(0, (length + (2 * pad)) * SideBySide));
        }

        ArrayPool<double>.Shared.Return(rented);
        return filtered;
    }

    /// <summary>Filters up to four signals; the last one stands in for those that lack.</summary>
    private static void Four(IReadOnlyList<double[]> signals, int from, double[][] filtered, SectionCascade filter, Padding padding, int pad, Span<double> buffer)
    {
        var last = filtered.Length - 1;
        double[] a = signals[from], b = signals[Math.Min(from + 1, last)], c = signals[Math.Min(from + 2, last)], d = signals[Math.Min(from + 3, last)];
        var inside = buffer.Slice(SideBySide * pad, SideBySide * a.Length);
        var into = inside;
        for (var i = 0; i < a.Length; i++)
        {
            (into[0], into[1], into[2], into[3]) = (a[i], b[i], c[i], d[i]);
            into = into[SideBySide..];
        }

        var behind = buffer[^(SideBySide * pad)..];
        for (var i = 0; i < SideBySide * pad; i++)
        {
            var (signal, beyond) = (i % SideBySide, SideBySide * ((i / SideBySide) + 1));
            buffer[(SideBySide * pad) - beyond + signal] = Beyond(inside[signal], inside[beyond + signal], padding);
            behind[i] = Beyond(inside[^(SideBySide - signal)], inside[^(beyond + SideBySide - signal)], padding);
        }

        filter.PassFour(buffer, isBackward: false);
        filter.PassFour(buffer, isBackward: true);
        (a, b, c, d) = (filtered[from], filtered[Math.Min(from + 1, last)], filtered[Math.Min(from + 2, last)], filtered[Math.Min(from + 3, last)]);
        for (var i = 0; i < a.Length; i++)
        {
            (a[i], b[i], c[i], d[i]) = (inside[0], inside[1], inside[2], inside[3]);
            inside = inside[SideBySide..];
        }
    }

    private static int Pad(int length, Padding padding, int padSamples)
    {
        var pad = padding == Padding.None ? 0 : padSamples;
        return length > pad ? pad : throw new ArgumentException($"A signal of {length} samples cannot be continued by {pad}.", nameof(padSamples));
    }

    private static double Beyond(double end, double inside, Padding padding) => padding switch
    {
        Padding.Odd => (2 * end) - inside,
        Padding.Even => inside,
        _ => end,
    };
}
