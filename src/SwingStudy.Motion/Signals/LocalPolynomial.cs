namespace SwingStudy.Motion.Signals;

/// <summary>Smoothing and differentiation by a polynomial that moves along the signal.</summary>
/// <remarks>
/// Source: Savitzky and Golay (1964), Anal Chem 36:1627. With <see cref="EndRule.LastWindow"/> the value at the last sample comes from samples
/// before it alone, which is why it serves up to impact.
/// </remarks>
public static class LocalPolynomial
{
    /// <summary>The smoothed signal or its derivative.</summary>
    /// <param name="samples">All finite, at least as many as the window.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    /// <param name="window">Samples of the window, odd, more than <paramref name="degree"/>.</param>
    /// <param name="degree">Degree of the polynomial.</param>
    /// <param name="derivative">0 = smoothed, 1 = per second, 2 = per second squared.</param>
    /// <param name="ends">What happens at the ends.</param>
    /// <exception cref="ArgumentException">The window is even, not above the degree or longer than the signal.</exception>
    public static double[] Smooth(ReadOnlySpan<double> samples, double sampleRateHz, int window, int degree, int derivative = 0, EndRule ends = EndRule.LastWindow)
    {
        if (window % 2 == 0 || window <= degree || window > samples.Length)
            throw new ArgumentException($"A window of {window} samples does not serve degree {degree} and {samples.Length} samples.", nameof(window));
        var half = window / 2;
        var rate = Math.Pow(sampleRateHz, derivative);
        var result = new double[samples.Length];
        var weights = Weights(window, degree, derivative);
        for (var i = half; i < samples.Length - half; i++)
            result[i] = rate * Dot(weights, samples.Slice(i - half, window));
        if (ends == EndRule.LastWindow)
        {
            double[] positions = [.. Enumerable.Range(0, window).Select(i => (double)i)];
            var first = PolynomialFit.Of(positions, samples[..window], degree);
            var last = PolynomialFit.Of(positions, samples[^window..], degree);
            for (var i = 0; i < half; i++)
                (result[i], result[^(i + 1)]) = (rate * first.At(i, derivative), rate * last.At(window - 1 - i, derivative));
            return result;
        }

        for (var i = 0; i < half; i++)
        {
            result[i] = rate * Continued(samples, i, weights, ends);
            result[^(i + 1)] = rate * Continued(samples, samples.Length - 1 - i, weights, ends);
        }

        return result;
    }

    /// <summary>Weights of the samples of a window for the value in its middle, oldest first; for a derivative, per sample.</summary>
    public static double[] Weights(int window, int degree, int derivative) =>
        PolynomialFit.Weights([.. Enumerable.Range(0, window).Select(i => (double)i)], degree, window / 2, derivative);

    /// <summary>Samples of a window, odd, whose smoothing is at −3 dB near a cut-off: N ≈ 2 M + 1 with M = ((n + 1) fs / (2 fc) + 4.6) / 3.2.</summary>
    /// <remarks>Source: Schafer (2011), IEEE Signal Process Mag 28(4):111, equation 8, for n below 25 and M above 25; a rough guide for shorter windows.</remarks>
    /// <param name="cutoffHz">The cut-off.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    /// <param name="degree">Degree n of the polynomial.</param>
    public static int WindowFor(double cutoffHz, double sampleRateHz, int degree) =>
        Math.Max((2 * (int)Math.Round((((degree + 1) * sampleRateHz / (2 * cutoffHz)) + 4.6) / 3.2)) + 1, degree + (degree % 2 == 0 ? 3 : 2));

    private static double Continued(ReadOnlySpan<double> samples, int at, double[] middle, EndRule ends)
    {
        var sum = 0.0;
        for (var k = 0; k < middle.Length; k++)
        {
            var i = at - (middle.Length / 2) + k;
            if (i < 0 || i >= samples.Length)
                i = ends == EndRule.Nearest ? Math.Clamp(i, 0, samples.Length - 1) : i < 0 ? -i : (2 * (samples.Length - 1)) - i;
            sum += middle[k] * samples[i];
        }

        return sum;
    }

    private static double Dot(double[] weights, ReadOnlySpan<double> samples)
    {
        var sum = 0.0;
        for (var i = 0; i < weights.Length; i++)
            sum += weights[i] * samples[i];
        return sum;
    }
}
