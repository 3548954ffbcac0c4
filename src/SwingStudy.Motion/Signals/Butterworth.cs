using System.Numerics;

namespace SwingStudy.Motion.Signals;

/// <summary>Low-pass filters of Butterworth's kind: flat below the cut-off, −3 dB at it.</summary>
/// <remarks>
/// The analogue prototype is mapped by the bilinear transform with the cut-off pre-warped to tan(π fc / fs). Poles nearest the unit circle come in the
/// last section. Source: Oppenheim and Schafer (2010), Discrete-Time Signal Processing, ch. 7; values agree with SciPy's <c>butter</c>.
/// </remarks>
public static class Butterworth
{
    /// <summary>A low-pass filter for one pass.</summary>
    /// <param name="order">1 to 12.</param>
    /// <param name="cutoffHz">Where a single pass leaves √½ of a sine's size; above 0 and below half the sampling rate.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    /// <exception cref="ArgumentOutOfRangeException">Order or cut-off is outside its range.</exception>
    public static SectionCascade LowPass(int order, double cutoffHz, double sampleRateHz)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(order, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(order, 12);
        if (!(cutoffHz > 0 && cutoffHz < sampleRateHz / 2))
            throw new ArgumentOutOfRangeException(nameof(cutoffHz), cutoffHz, $"A cut-off lies above 0 and below half the sampling rate of {sampleRateHz} Hz.");

        var warped = 2 * Math.Tan(Math.PI * cutoffHz / sampleRateHz);
        var sections = new List<SecondOrderSection>();
        var gain = 1.0;
        if (order % 2 == 1)
        {
            var pole = Digital(-warped);
            sections.Add(new SecondOrderSection(1, 1, 0, -pole.Real, 0));
            gain *= (1 - pole.Real) / 2;
        }

        // Pairs of conjugate poles from the one farthest from the unit circle to the nearest.
        for (var pair = (order / 2) - 1; pair >= 0; pair--)
        {
            var angle = Math.PI * ((2 * pair) + 1 + order) / (2 * order);
            var pole = Digital(warped * Complex.Exp(new Complex(0, angle)));
            var (a1, a2) = (-2 * pole.Real, (pole.Real * pole.Real) + (pole.Imaginary * pole.Imaginary));
            sections.Add(new SecondOrderSection(1, 2, 1, a1, a2));
            gain *= (1 + a1 + a2) / 4;
        }

        var first = sections[0];
        sections[0] = first with { B0 = gain * first.B0, B1 = gain * first.B1, B2 = gain * first.B2 };
        return new SectionCascade(order, [.. sections]);
    }

    /// <summary>Cut-off of one pass for which <paramref name="passes"/> passes together are at −3 dB where it is wanted.</summary>
    /// <remarks>
    /// C = (2^(1/P) − 1)^(1/(2n)) divides the warped frequency tan(π fc / fs), not the frequency itself.
    /// Source: Winter (2009), Biomechanics and Motor Control of Human Movement, ch. 3; Robertson and Dowling (2003), J Electromyogr Kinesiol 13:569.
    /// </remarks>
    /// <param name="order">Order n of one pass.</param>
    /// <param name="cutoffHz">The cut-off that is wanted of all passes together.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    /// <param name="passes">P, usually 2.</param>
    public static double CorrectedCutoff(int order, double cutoffHz, double sampleRateHz, int passes = 2) =>
        Math.Atan(Math.Tan(Math.PI * cutoffHz / sampleRateHz) / Correction(order, passes)) * sampleRateHz / Math.PI;

    /// <summary>The factor C of <see cref="CorrectedCutoff"/>: 0.6436 for order 1, 0.8022 for order 2, 0.8957 for order 4 of two passes.</summary>
    public static double Correction(int order, int passes = 2) => Math.Pow(Math.Pow(2, 1.0 / passes) - 1, 1.0 / (2 * order));

    private static Complex Digital(Complex analogue) => (2 + analogue) / (2 - analogue);
}
