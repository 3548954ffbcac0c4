using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.EffectSizes;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Tests.Reference;

internal static class EffectSizeCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("independent groups", c => c.Expects("glass_delta"), IndependentValues),
        new("paired values", c => c.Expects("smcr_yi"), PairedValues),
        new("matched groups from moments", c => c.Expects("s_within") && c.Expects("g_approx"), MatchedValues),
        new("log response ratio", c => c.Expects("lnRR"), RatioValues),
        new("dominance", c => c.Expects("cliffs_delta") && c.Expects("U_group1"), DominanceValues),
        new("paired dominance", c => c.Expects("rank_biserial_matched"), PairedDominanceValues),
        new("Hedges' J", c => c.Has("df") && c.Expects("J_exact") && c.Inputs.EnumerateObject().Count() == 1, CorrectionValues),
    ];

    /// <summary>The cases subtract group 2 from group 1.</summary>
    private static IndependentContrast Contrast(ReferenceCase c) => c.Has("group1")
        ? IndependentContrast.Of(c.Numbers("group2"), c.Numbers("group1"))
        : c.Has("pre")
            ? IndependentContrast.Of(c.Numbers("pre"), c.Numbers("post"))
            : new IndependentContrast(
                Summary.FromMoments(c.Integer("n2"), c.Number("mean2"), c.Number("sd2")),
                Summary.FromMoments(c.Integer("n1"), c.Number("mean1"), c.Number("sd1")));

    private static Dictionary<string, object?> IndependentValues(ReferenceCase c)
    {
        var contrast = Contrast(c);
        var (d, g, large) = (HedgesG.Uncorrected(contrast), HedgesG.Pooled(contrast), HedgesG.PooledLargeSample(contrast));
        var glass = GlassDelta.Uncorrected(contrast);
        var df = contrast.PooledDegreesOfFreedom;
        return new()
        {
            ["mean_diff"] = MeanDifference.Pooled(contrast).Value,
            ["var_mean_diff_pooled"] = Square(MeanDifference.Pooled(contrast).StandardError),
            ["s_pooled"] = contrast.PooledStandardDeviation,
            ["df"] = df,
            ["t"] = contrast.PooledT,
            ["p_two_sided"] = d.P,
            ["d"] = d.Value,
            ["var_d"] = Square(d.StandardError),
            ["se_d"] = d.StandardError,
            ["J_exact"] = HedgesCorrection.Exact(df),
            ["J_approx"] = HedgesCorrection.Approximate(df),
            ["g_exact"] = g.Value,
            ["g_approx"] = large.Value,
            ["var_g"] = Square(large.StandardError),
            ["se_g"] = large.StandardError,
            ["ci_d_normal"] = Pair(Limits.Normal(d.Value!.Value, d.StandardError!.Value, 0.95)),
            ["ci_g_normal"] = Pair(large.Interval),
            ["ci_d_nct"] = Pair(d.Interval),
            ["ci_g_exact_nct"] = Pair(g.Interval),
            ["glass_delta"] = glass.Value,
            ["var_glass"] = Square(glass.StandardError),
            ["ci_glass_nct"] = Pair(glass.Interval),
            ["cl_normal"] = NormalSuperiority.Independent(contrast).Value,
        };
    }

    private static Dictionary<string, object?> PairedValues(ReferenceCase c)
    {
        var contrast = PairedContrast.Of(c.Numbers("pre"), c.Numbers("post"));
        var mean = MeanDifference.Paired(contrast);
        var change = StandardizedChange.ByDifferences(contrast);
        var repeated = StandardizedChange.ByRepeatedMeasures(contrast);
        var baseline = StandardizedChange.ByBaseline(contrast);
        var (exact, approximate) = (HedgesCorrection.Exact(contrast.DegreesOfFreedom), HedgesCorrection.Approximate(contrast.DegreesOfFreedom));
        var (n, dz, drm) = (contrast.Count, change.Value / exact, repeated.Value / exact);
        return new()
        {
            ["mean_diff"] = mean.Value,
            ["sd_diff"] = contrast.StandardDeviationOfDifferences,
            ["sd_pre"] = contrast.StandardDeviationBefore,
            ["sd_post"] = contrast.StandardDeviationAfter,
            ["r"] = contrast.Correlation,
            ["t"] = contrast.T,
            ["df"] = contrast.DegreesOfFreedom,
            ["p_two_sided"] = mean.P,
            ["ci_mean_diff"] = Pair(mean.Interval),
            ["d_z"] = dz,
            ["d_av"] = StandardizedChange.ByAverage(contrast).Value / exact,
            ["d_av_rms"] = StandardizedChange.ByAverageVariance(contrast).Value / exact,
            ["d_rm"] = drm,
            ["d_pre"] = baseline.Value / exact,
            ["J_exact"] = exact,
            ["J_approx"] = approximate,
            ["g_z"] = change.Value,
            ["g_av"] = StandardizedChange.ByAverage(contrast).Value,
            ["g_av_rms"] = StandardizedChange.ByAverageVariance(contrast).Value,
            ["g_rm"] = repeated.Value,
            ["g_rm_approx"] = approximate * drm,
            ["g_pre"] = baseline.Value,
            ["var_d_rm"] = Square(repeated.StandardError / exact),
            ["se_d_rm"] = repeated.StandardError / exact,
            ["var_g_rm"] = Square(approximate * repeated.StandardError / exact),
            ["var_dz"] = (1.0 / n) + (dz * dz / (2 * n)),
            ["ci_dz_nct"] = Pair(change.Interval, 1 / exact),
            ["ci_gz_nct"] = Pair(change.Interval),
            ["smcr_yi"] = baseline.Value,
            ["smcr_vi"] = Square(baseline.StandardError),
            ["smcc_yi"] = change.Value,
            ["smcc_vi"] = Square(change.StandardError),
            ["cl_within"] = NormalSuperiority.Paired(contrast).Value,
        };
    }

    private static Dictionary<string, object?> MatchedValues(ReferenceCase c)
    {
        var contrast = PairedContrast.FromMoments(c.Integer("n"), c.Number("mean2"), c.Number("mean1"), c.Number("sd_diff"), c.Number("r"));
        var (exact, approximate) = (HedgesCorrection.Exact(contrast.DegreesOfFreedom), HedgesCorrection.Approximate(contrast.DegreesOfFreedom));
        var repeated = StandardizedChange.ByRepeatedMeasures(contrast);
        var (d, se) = (repeated.Value / exact, repeated.StandardError / exact);
        var mean = MeanDifference.Paired(contrast);
        return new()
        {
            ["s_within"] = StandardizedChange.WithinStandardDeviation(contrast),
            ["d"] = d,
            ["var_d"] = se * se,
            ["se_d"] = se,
            ["J_approx"] = approximate,
            ["J_exact"] = exact,
            ["g_approx"] = approximate * d,
            ["g_exact"] = repeated.Value,
            ["var_g"] = Square(approximate * se),
            ["se_g"] = approximate * se,
            ["var_mean_diff"] = Square(mean.StandardError),
            ["se_mean_diff"] = mean.StandardError,
            ["d_z"] = StandardizedChange.ByDifferences(contrast).Value / exact,
        };
    }

    private static Dictionary<string, object?> RatioValues(ReferenceCase c)
    {
        var contrast = Contrast(c);
        var (plain, pooled) = (LogResponseRatio.Independent(contrast), LogResponseRatio.IndependentPooled(contrast));
        var corrected = LogResponseRatio.IndependentCorrected(contrast);
        var percent = PercentChange.Independent(contrast);
        var values = new Dictionary<string, object?>
        {
            ["ratio"] = Math.Exp(plain.Value!.Value),
            ["lnRR"] = plain.Value,
            ["var_lnRR"] = Square(plain.StandardError),
            ["se_lnRR"] = plain.StandardError,
            ["var_lnRR_pooled"] = Square(pooled.StandardError),
            ["se_lnRR_pooled"] = pooled.StandardError,
            ["lnRR_delta"] = corrected.Value,
            ["var_delta"] = Square(corrected.StandardError),
            ["percent_change"] = percent.Value,
            ["ci_percent_change"] = Pair(percent.Interval),
        };
        if (c.Has("pre"))
        {
            var paired = PairedContrast.Of(c.Numbers("pre"), c.Numbers("post"));
            values["var_lnRR_paired"] = Square(LogResponseRatio.Paired(paired).StandardError);
            values["se_lnRR_paired"] = LogResponseRatio.Paired(paired).StandardError;
            values["percent_change_of_means"] = PercentChange.Paired(paired).Value;
            values["mean_of_individual_percent_changes"] = PercentChange.MeanOfIndividual(c.Numbers("pre"), c.Numbers("post")).Value;
        }

        return values;
    }

    private static Dictionary<string, object?> DominanceValues(ReferenceCase c)
    {
        var dominance = Dominance.Of(c.Numbers("group2"), c.Numbers("group1"));
        var delta = dominance.CliffsDelta();
        return new()
        {
            ["prob_superiority"] = dominance.ProbabilityOfSuperiority().Value,
            ["cliffs_delta"] = delta.Value,
            ["rank_biserial"] = dominance.RankBiserial().Value,
            ["U_group1"] = dominance.U,
            ["var_cliff"] = dominance.Variance,
            ["se_cliff"] = delta.StandardError,
            ["n_greater"] = dominance.AfterHigher,
            ["n_less"] = dominance.BeforeHigher,
            ["n_tied"] = dominance.Tied,
        };
    }

    private static Dictionary<string, object?> PairedDominanceValues(ReferenceCase c)
    {
        var dominance = PairedDominance.Of(c.Numbers("pre"), c.Numbers("post"));
        return new()
        {
            ["T_plus"] = dominance.RankSumOfRises,
            ["T_minus"] = dominance.RankSumOfFalls,
            ["n_nonzero"] = dominance.Rises + dominance.Falls,
            ["rank_biserial_matched"] = dominance.RankBiserial().Value,
            ["prob_superiority_paired"] = dominance.ProbabilityOfSuperiority().Value,
            ["sign_plus"] = dominance.Rises,
            ["sign_minus"] = dominance.Falls,
        };
    }

    private static Dictionary<string, object?> CorrectionValues(ReferenceCase c) => new()
    {
        ["J_exact"] = c.Numbers("df").Select(HedgesCorrection.Exact).ToArray(),
        ["J_approx"] = c.Numbers("df").Select(HedgesCorrection.Approximate).ToArray(),
    };

    private static double? Square(double? x) => x * x;

    private static double[]? Pair(Interval? interval, double factor = 1) => interval is { } i ? [i.Low * factor, i.High * factor] : null;
}
