using System.Buffers;
using System.Runtime.InteropServices;

namespace SwingStudy.Motion.Signals;

/// <summary>Filtering forward and backward, so that no lag remains.</summary>
/// <remarks>
/// The signal is continued at both ends, each pass starts in the steady state of its first sample, and the continuation is cut off again.
/// Source: Gustafsson (1996), IEEE Trans Signal Process 44:988, for the problem; the rule is that of SciPy's <c>filtfilt</c>, whose values it gives.
/// </remarks>
public static class ZeroLag
{
    private const int SideBySide = SectionCascade.SideBySide;

    /// <summary>Samples of a signal that are laid beside those of others before the next signal's: they stay near the processor.</summary>
    private const int SamplesLaid = 64;

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

        // The pool of bytes is compiled ahead; one of numbers is compiled at each start.
        var rented = ArrayPool<byte>.Shared.Rent((length + (2 * pad)) * SideBySide * sizeof(double));
        var buffer = MemoryMarshal.Cast<byte, double>(rented.AsSpan())[..((length + (2 * pad)) * SideBySide)];
        for (var from = 0; from < filtered.Length; from += SideBySide)
        {
            for (var i = from; i < Math.Min(from + SideBySide, filtered.Length); i++)
                filtered[i] = GC.AllocateUninitializedArray<double>(length);
            Filter(signals, from, filtered, filter, padding, pad, buffer);
        }

        ArrayPool<byte>.Shared.Return(rented);
        return filtered;
    }

    /// <summary>Filters as many signals as go side by side, or those that are left.</summary>
    private static void Filter(IReadOnlyList<double[]> signals, int from, double[][] filtered, SectionCascade filter, Padding padding, int pad, Span<double> buffer)
    {
        var length = signals[from].Length;
        var count = Math.Min(SideBySide, filtered.Length - from);
        if (count < SideBySide)
            buffer.Clear();
        var inside = buffer.Slice(SideBySide * pad, SideBySide * length);
        for (var at = 0; at < length; at += SamplesLaid)
        {
            for (var i = 0; i < count; i++)
                Lay(signals[from + i].AsSpan(at, Math.Min(SamplesLaid, length - at)), inside[((SideBySide * at) + i)..]);
        }

        var behind = buffer[^(SideBySide * pad)..];
        for (var i = 0; i < SideBySide * pad; i++)
        {
            var (signal, beyond) = (i % SideBySide, SideBySide * ((i / SideBySide) + 1));
            buffer[(SideBySide * pad) - beyond + signal] = Beyond(inside[signal], inside[beyond + signal], padding);
            behind[i] = Beyond(inside[^(SideBySide - signal)], inside[^(beyond + SideBySide - signal)], padding);
        }

        filter.Pass(buffer, isBackward: false);
        filter.Pass(buffer, isBackward: true);
        for (var at = 0; at < length; at += SamplesLaid)
        {
            for (var i = 0; i < count; i++)
                Gather(inside[((SideBySide * at) + i)..], filtered[from + i].AsSpan(at, Math.Min(SamplesLaid, length - at)));
        }
    }

    private static void Lay(ReadOnlySpan<double> samples, Span<double> beside)
    {
        for (var i = 0; i < samples.Length; i++)
            beside[i * SideBySide] = samples[i];
    }

    private static void Gather(ReadOnlySpan<double> beside, Span<double> samples)
    {
        for (var i = 0; i < samples.Length; i++)
            samples[i] = beside[i * SideBySide];
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
