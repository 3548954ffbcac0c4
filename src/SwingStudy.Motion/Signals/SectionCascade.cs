using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace SwingStudy.Motion.Signals;

/// <summary>Sections of a recursive filter, one after the other.</summary>
public sealed class SectionCascade
{
    /// <summary>Signals that go through together: the forces and moments of two plates.</summary>
    internal const int SideBySide = 12;

    private readonly SecondOrderSection[] _sections;

    internal SectionCascade(int order, SecondOrderSection[] sections) => (Order, _sections) = (order, sections);

    /// <summary>Order of the whole: delays of input and output.</summary>
    public int Order { get; }

    /// <summary>The sections in their order; the gain of the whole lies in the first.</summary>
    public IReadOnlyList<SecondOrderSection> Sections => _sections;

    /// <summary>Numerator of the transfer function in rising powers of the delay, <see cref="Order"/> + 1 weights.</summary>
    public IReadOnlyList<double> Numerator => Product(section => [section.B0, section.B1, section.B2]);

    /// <summary>Denominator, the first weight being one.</summary>
    public IReadOnlyList<double> Denominator => Product(section => [1, section.A1, section.A2]);

    /// <summary>Size of the output for a sine of size one, of a single pass.</summary>
    /// <param name="frequencyHz">Its frequency.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    public double Gain(double frequencyHz, double sampleRateHz)
    {
        var delay = Complex.Exp(new Complex(0, -2 * Math.PI * frequencyHz / sampleRateHz));
        var gain = Complex.One;
        foreach (var s in _sections)
            gain *= (s.B0 + (delay * (s.B1 + (delay * s.B2)))) / (1 + (delay * (s.A1 + (delay * s.A2))));
        return gain.Magnitude;
    }

    /// <summary>One pass forward, in place.</summary>
    /// <param name="samples">Samples, replaced by the output.</param>
    /// <param name="settledAt">The filter starts as if this value had come in for ever; 0 = at rest.</param>
    public void Pass(Span<double> samples, double settledAt)
    {
        foreach (var section in _sections)
        {
            var (b0, b1, b2, a1, a2) = section;
            var (z1, z2) = section.SteadyState;
            z1 *= settledAt;
            z2 *= settledAt;
            settledAt *= section.ConstantGain;
            for (var i = 0; i < samples.Length; i++)
            {
                var x = samples[i];
                var y = (b0 * x) + z1;
                z1 = (b1 * x) - (a1 * y) + z2;
                z2 = (b2 * x) - (a2 * y);
                samples[i] = y;
            }
        }
    }

    /// <summary>One pass of several signals side by side, in place: each takes the very steps of a pass of its own, from the steady state of its first sample.</summary>
    /// <remarks>
    /// A pass waits for its own last output; three vectors of them wait together. No vector is handed over, which would keep the method from being
    /// compiled ahead.
    /// </remarks>
    /// <param name="samples">Sample after sample of <see cref="SideBySide"/> signals.</param>
    /// <param name="isBackward">From the last sample to the first.</param>
    internal void Pass(Span<double> samples, bool isBackward)
    {
        const int four = SideBySide / 3;
        var (start, step) = isBackward ? (samples.Length - SideBySide, -SideBySide) : (0, SideBySide);
        var settledAt = samples.Slice(start, SideBySide).ToArray();
        ref var origin = ref MemoryMarshal.GetReference(samples);
        foreach (var section in _sections)
        {
            var (b0, b1, b2) = (Vector256.Create(section.B0), Vector256.Create(section.B1), Vector256.Create(section.B2));
            var (a1, a2) = (Vector256.Create(section.A1), Vector256.Create(section.A2));
            var (first, second) = section.SteadyState;
            Vector256<double> s = Vector256.LoadUnsafe(ref settledAt[0]), t = Vector256.LoadUnsafe(ref settledAt[four]), u = Vector256.LoadUnsafe(ref settledAt[2 * four]);
            Vector256<double> s1 = first * s, s2 = second * s, t1 = first * t, t2 = second * t, u1 = first * u, u2 = second * u;
            for (var i = 0; i < settledAt.Length; i++)
                settledAt[i] *= section.ConstantGain;
            for (var at = start; (uint)at < (uint)samples.Length; at += step)
            {
                var x = Vector256.LoadUnsafe(ref origin, (nuint)at);
                var y = (b0 * x) + s1;
                s1 = (b1 * x) - (a1 * y) + s2;
                s2 = (b2 * x) - (a2 * y);
                y.StoreUnsafe(ref origin, (nuint)at);
                x = Vector256.LoadUnsafe(ref origin, (nuint)(at + four));
                y = (b0 * x) + t1;
                t1 = (b1 * x) - (a1 * y) + t2;
                t2 = (b2 * x) - (a2 * y);
                y.StoreUnsafe(ref origin, (nuint)(at + four));
                x = Vector256.LoadUnsafe(ref origin, (nuint)(at + (2 * four)));
                y = (b0 * x) + u1;
                u1 = (b1 * x) - (a1 * y) + u2;
                u2 = (b2 * x) - (a2 * y);
                y.StoreUnsafe(ref origin, (nuint)(at + (2 * four)));
            }
        }
    }

    private double[] Product(Func<SecondOrderSection, double[]> polynomial)
    {
        double[] product = [1];
        foreach (var section in _sections)
        {
            var factor = polynomial(section);
            var next = new double[product.Length + 2];
            for (var i = 0; i < product.Length; i++)
            {
                for (var j = 0; j < factor.Length; j++)
                    next[i + j] += product[i] * factor[j];
            }

            product = next;
        }

        return product[..(Order + 1)];
    }
}
