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
        var pad = padding == Padding.None ? 0 : padSamples;
        if (samples.Length <= pad)
            throw new ArgumentException($"A signal of {samples.Length} samples cannot be continued by {pad}.", nameof(samples));
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

    private static double Beyond(double end, double inside, Padding padding) => padding switch
    {
        Padding.Odd => (2 * end) - inside,
        Padding.Even => inside,
        _ => end,
    };
}
