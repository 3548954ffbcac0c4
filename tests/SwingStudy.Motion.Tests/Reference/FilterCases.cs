using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Tests.Reference;

internal static class FilterCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("Butterworth design", c => c.Has("fc") && c.Expects("sos"), Design),
        new("zero-lag filtering", c => c.Has("fc") && c.Expects("filtfilt_default"), ZeroLagValues),
        new("residual analysis", c => c.Has("tail_from_hz"), Residuals),
    ];

    private static Dictionary<string, object?> Design(ReferenceCase c)
    {
        var (order, fc, fs) = (c.Integer("order"), c.Number("fc"), c.Number("fs"));
        var filter = Butterworth.LowPass(order, fc, fs);
        var corrected = Butterworth.LowPass(order, Butterworth.CorrectedCutoff(order, fc, fs), fs);
        double[] frequencies = [.. c.Expected.GetProperty("freq_hz").EnumerateArray().Select(f => f.GetDouble())];
        return new()
        {
            ["b"] = filter.Numerator,
            ["a"] = filter.Denominator,
            ["sos"] = filter.Sections.Select(s => new[] { s.B0, s.B1, s.B2, 1, s.A1, s.A2 }).ToArray(),
            ["lfilter_zi"] = WholeState(filter),
            ["sosfilt_zi"] = SectionStates(filter),
            ["freq_hz"] = frequencies,
            ["gain"] = frequencies.Select(f => filter.Gain(f, fs)).ToArray(),
            ["dual_pass_corrected_cutoff_hz"] = Butterworth.CorrectedCutoff(order, fc, fs),
            ["dual_pass_correction_C"] = Butterworth.Correction(order),
            ["b_dual_pass_corrected"] = corrected.Numerator,
            ["a_dual_pass_corrected"] = corrected.Denominator,
        };
    }

    /// <summary>Steady state of the filter as one section of high order, from its weights: z(k) = Σ over j above k of (b(j) − a(j)).</summary>
    private static double[] WholeState(SectionCascade filter)
    {
        var state = new double[filter.Order];
        for (var k = filter.Order; k > 0; k--)
            state[k - 1] = filter.Numerator[k] - filter.Denominator[k] + (k < filter.Order ? state[k] : 0);
        return state;
    }

    private static double[][] SectionStates(SectionCascade filter)
    {
        var level = 1.0;
        var states = new List<double[]>();
        foreach (var section in filter.Sections)
        {
            var (first, second) = section.SteadyState;
            states.Add([level * first, level * second]);
            level *= section.ConstantGain;
        }

        return [.. states];
    }

    private static Dictionary<string, object?> ZeroLagValues(ReferenceCase c)
    {
        var x = c.Numbers("x");
        var filter = Butterworth.LowPass(c.Integer("order"), c.Number("fc"), c.Number("fs"));
        var pad = ZeroLag.UsualPad(filter.Order);
        double[] fromRest = [.. x], settled = [.. x];
        filter.Pass(fromRest, 0);
        filter.Pass(settled, x[0]);
        var usual = new LowPass(c.Number("fc"), c.Integer("order"), PassCorrection.EachPass).Apply(x, c.Number("fs"));
        return new()
        {
            ["filtfilt_default"] = usual,
            ["filtfilt_padlen"] = pad,
            ["filtfilt_even"] = ZeroLag.Filter(x, filter, Padding.Even, pad),
            ["filtfilt_constant"] = ZeroLag.Filter(x, filter, Padding.Constant, pad),
            ["filtfilt_nopad"] = ZeroLag.Filter(x, filter, Padding.None, 0),
            ["sosfiltfilt_default"] = usual,
            ["sosfiltfilt_padlen"] = pad,
            ["lfilter_zero_state"] = fromRest,
            ["lfilter_zi_first_sample"] = settled,
        };
    }

    private static Dictionary<string, object?> Residuals(ReferenceCase c)
    {
        var analysis = ResidualAnalysis.Of(c.Numbers("x"), c.Number("fs"), c.Numbers("cutoffs_hz"), c.Number("tail_from_hz"), c.Integer("order"));
        return new()
        {
            ["residual_rms"] = analysis.ResidualRms,
            ["tail_slope"] = analysis.TailSlope,
            ["tail_intercept"] = analysis.TailIntercept,
            ["tail_r2"] = analysis.TailRSquared,
            ["selected_cutoff_hz"] = analysis.CutoffHz,
        };
    }
}
