namespace SwingStudy.Motion.Signals;

/// <summary>Derivatives by differences of samples.</summary>
/// <remarks>Source: Winter (2009), Biomechanics and Motor Control of Human Movement, ch. 3; Fornberg (1988), Math Comput 51:699, for the ends.</remarks>
public static class Difference
{
    /// <summary>First derivative: (x₊₁ − x₋₁) / (2 Δt) inside, one-sided of second order at the ends.</summary>
    /// <param name="samples">At least three.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    /// <exception cref="ArgumentException">There are fewer than three samples.</exception>
    public static double[] Central(ReadOnlySpan<double> samples, double sampleRateHz)
    {
        var result = Inside(samples, sampleRateHz);
        result[0] = sampleRateHz * ((-1.5 * samples[0]) + (2 * samples[1]) - (0.5 * samples[2]));
        result[^1] = sampleRateHz * ((1.5 * samples[^1]) - (2 * samples[^2]) + (0.5 * samples[^3]));
        return result;
    }

    /// <summary>The same with the plain difference of two samples at the ends.</summary>
    /// <inheritdoc cref="Central"/>
    public static double[] CentralPlainEnds(ReadOnlySpan<double> samples, double sampleRateHz)
    {
        var result = Inside(samples, sampleRateHz);
        result[0] = sampleRateHz * (samples[1] - samples[0]);
        result[^1] = sampleRateHz * (samples[^1] - samples[^2]);
        return result;
    }

    /// <summary>First derivative from five samples, two samples shorter at each end: (x₋₂ − 8 x₋₁ + 8 x₊₁ − x₊₂) / (12 Δt).</summary>
    public static double[] FivePoint(ReadOnlySpan<double> samples, double sampleRateHz)
    {
        var result = new double[Math.Max(0, samples.Length - 4)];
        for (var i = 0; i < result.Length; i++)
            result[i] = sampleRateHz * (samples[i] - (8 * samples[i + 1]) + (8 * samples[i + 3]) - samples[i + 4]) / 12;
        return result;
    }

    /// <summary>Second derivative, one sample shorter at each end: (x₊₁ − 2 x + x₋₁) / Δt².</summary>
    public static double[] Second(ReadOnlySpan<double> samples, double sampleRateHz)
    {
        var result = new double[Math.Max(0, samples.Length - 2)];
        for (var i = 0; i < result.Length; i++)
            result[i] = sampleRateHz * sampleRateHz * (samples[i + 2] - (2 * samples[i + 1]) + samples[i]);
        return result;
    }

    private static double[] Inside(ReadOnlySpan<double> samples, double sampleRateHz)
    {
        if (samples.Length < 3)
            throw new ArgumentException("A derivative needs three samples.", nameof(samples));
        var result = new double[samples.Length];
        for (var i = 1; i < samples.Length - 1; i++)
            result[i] = sampleRateHz * (samples[i + 1] - samples[i - 1]) / 2;
        return result;
    }
}
