using System.Globalization;

namespace SwingStudy.Motion.Signals;

/// <summary>A zero-lag Butterworth low-pass as a study declares it.</summary>
/// <param name="CutoffHz">Cut-off.</param>
/// <param name="Order">Order of each of the two passes: 2 is what papers call "fourth order, zero lag".</param>
/// <param name="Correction">What the cut-off means.</param>
public sealed record LowPass(double CutoffHz, int Order = 2, PassCorrection Correction = PassCorrection.BothPasses)
{
    /// <summary>Periods of the cut-off by which the ends are continued.</summary>
    private const double PadPeriods = 3;

    private const int FewestSamples = 4;

    /// <summary>The filter in words, for the <c>method</c> of what it made.</summary>
    public string Method => string.Create(CultureInfo.InvariantCulture,
        $"zero-lag Butterworth, order {Order} twice, {CutoffHz:0.###} Hz{(Correction == PassCorrection.EachPass ? " each pass" : "")}");

    /// <summary>Whether the filter can be made at this rate: the cut-off of a pass must stay below half of it.</summary>
    public bool Fits(double sampleRateHz) => CutoffHz < sampleRateHz / 2;

    /// <summary>The filtered signal. Ends are continued by odd reflection over three periods of the cut-off, or as far as the signal reaches.</summary>
    /// <remarks>With <see cref="PassCorrection.EachPass"/> the continuation is the usual one of general functions, 3 (order + 1) samples.</remarks>
    /// <param name="samples">All finite. A signal of fewer than four samples is returned as it is.</param>
    /// <param name="sampleRateHz">Samples a second. A rate at which the filter does not fit leaves the signal as it is: there is nothing above to remove.</param>
    public double[] Apply(ReadOnlySpan<double> samples, double sampleRateHz)
    {
        if (samples.Length < FewestSamples || !Fits(sampleRateHz))
            return samples.ToArray();
        var (filter, pad) = At(sampleRateHz);
        return ZeroLag.Filter(samples, filter, Padding.Odd, Math.Min(pad, samples.Length - 1));
    }

    /// <summary>Several signals of equal length, filtered as <see cref="Apply(ReadOnlySpan{double}, double)"/> filters each, several times as fast.</summary>
    /// <param name="signals">All finite, equally long.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    public double[][] Apply(IReadOnlyList<double[]> signals, double sampleRateHz)
    {
        if (signals.Count == 0 || signals[0].Length < FewestSamples || !Fits(sampleRateHz))
            return [.. signals.Select(signal => (double[])signal.Clone())];
        var (filter, pad) = At(sampleRateHz);
        return ZeroLag.Filter(signals, filter, Padding.Odd, Math.Min(pad, signals[0].Length - 1));
    }

    /// <summary>Each stretch without missing samples, filtered; samples of stretches of fewer than four become missing.</summary>
    /// <param name="curves">Curves of one rate, equally long, NaN where missing. Those that miss the same samples are filtered together.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    public double[][] ApplyToStretches(IReadOnlyList<double[]> curves, double sampleRateHz)
    {
        var stretches = curves.Select(curve => SampleRun.Where(curve, FewestSamples, (x, _) => !double.IsNaN(x))).ToList();
        if (!stretches.TrueForAll(runs => runs.SequenceEqual(stretches[0])))
            return [.. curves.SelectMany(curve => ApplyToStretches([curve], sampleRateHz))];
        double[][] filtered = [.. curves.Select(curve => new double[curve.Length])];
        Array.ForEach(filtered, curve => Array.Fill(curve, double.NaN));
        foreach (var run in stretches.FirstOrDefault([]))
        {
            var parts = Apply([.. curves.Select(curve => curve[run.From..(run.From + run.Count)])], sampleRateHz);
            for (var i = 0; i < parts.Length; i++)
                parts[i].CopyTo(filtered[i], run.From);
        }

        return filtered;
    }

    private (SectionCascade Filter, int Pad) At(double sampleRateHz)
    {
        var isCorrected = Correction == PassCorrection.BothPasses;
        var cutoff = isCorrected ? Butterworth.CorrectedCutoff(Order, CutoffHz, sampleRateHz) : CutoffHz;
        var pad = isCorrected ? Math.Max(ZeroLag.UsualPad(Order), (int)Math.Ceiling(PadPeriods * sampleRateHz / CutoffHz)) : ZeroLag.UsualPad(Order);
        return (Butterworth.LowPass(Order, cutoff, sampleRateHz), pad);
    }
}
