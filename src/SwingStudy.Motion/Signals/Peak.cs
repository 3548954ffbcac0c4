using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

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
        var largest = Largest(searched, sign);
        return double.IsNegativeInfinity(largest) ? -1 : first + IndexOf(searched, sign * largest);
    }

    /// <summary>Position of the first sample of a value that one of them has.</summary>
    private static int IndexOf(ReadOnlySpan<double> samples, double value)
    {
        ref var origin = ref MemoryMarshal.GetReference(samples);
        var i = 0;
        while (i <= samples.Length - Vector256<double>.Count && !Vector256.EqualsAny(Vector256.LoadUnsafe(ref origin, (nuint)i), Vector256.Create(value)))
            i += Vector256<double>.Count;
        while (samples[i] != value)
            i++;
        return i;
    }

    /// <summary>The largest of the samples times a sign; minus infinity where all are missing.</summary>
    private static double Largest(ReadOnlySpan<double> samples, double sign)
    {
        ref var origin = ref MemoryMarshal.GetReference(samples);
        var largest = Vector256.Create(double.NegativeInfinity);
        var next = largest;
        var i = 0;
        for (; i <= samples.Length - (2 * Vector256<double>.Count); i += 2 * Vector256<double>.Count)
        {
            var (one, other) = (sign * Vector256.LoadUnsafe(ref origin, (nuint)i), sign * Vector256.LoadUnsafe(ref origin, (nuint)(i + Vector256<double>.Count)));
            largest = Vector256.ConditionalSelect(Vector256.GreaterThan(one, largest), one, largest);
            next = Vector256.ConditionalSelect(Vector256.GreaterThan(other, next), other, next);
        }

        largest = Vector256.ConditionalSelect(Vector256.GreaterThan(next, largest), next, largest);
        var value = double.NegativeInfinity;
        for (var part = 0; part < Vector256<double>.Count; part++)
            value = largest[part] > value ? largest[part] : value;
        for (; i < samples.Length; i++)
        {
            var sample = sign * samples[i];
            value = sample > value ? sample : value;
        }

        return value;
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
