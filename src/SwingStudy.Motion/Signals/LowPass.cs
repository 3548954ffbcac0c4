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
        if (samples.Length < 4 || !Fits(sampleRateHz))
            return samples.ToArray();
        var isCorrected = Correction == PassCorrection.BothPasses;
        var cutoff = isCorrected ? Butterworth.CorrectedCutoff(Order, CutoffHz, sampleRateHz) : CutoffHz;
        var pad = isCorrected ? Math.Max(ZeroLag.UsualPad(Order), (int)Math.Ceiling(PadPeriods * sampleRateHz / CutoffHz)) : ZeroLag.UsualPad(Order);
        return ZeroLag.Filter(samples, Butterworth.LowPass(Order, cutoff, sampleRateHz), Padding.Odd, Math.Min(pad, samples.Length - 1));
    }
}
