using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.SingleCase;

namespace SwingStudy.Statistics.Tests.Reference;

internal static class SingleCaseCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("non-overlap of two phases", c => c.Expects("NAP"), NonOverlap),
        new("monotone trend", c => c.Expects("theil_sen_intercept_median_residual"), Trend),
        new("baseline-corrected tau", c => c.Expects("tau_b_corrected"), CorrectedTau),
        new("interrupted time series", c => c.Expects("ols_coef"), InterruptedSeries),
    ];

    private static Dictionary<string, object?> NonOverlap(ReferenceCase c)
    {
        double[] a = c.Numbers("A"), b = c.Numbers("B");
        var improvement = c.Text("improvement") == "increase" ? Improvement.Increase : Improvement.Decrease;
        var nap = NonOverlapOfAllPairs.Of(a, b, improvement);
        var tau = TauU.Of(a, b, improvement);
        var sign = improvement == Improvement.Increase ? 1 : -1;
        var before = Summary.Of(a);
        var rise = sign * (Summary.Of(b).Mean - before.Mean);
        return new()
        {
            ["n_A"] = a.Length,
            ["n_B"] = b.Length,
            ["pairs"] = nap.Pairs.Total,
            ["n_pos"] = nap.Pairs.Improved,
            ["n_neg"] = nap.Pairs.Worse,
            ["n_tie"] = nap.Pairs.Tied,
            ["NAP"] = nap.Estimate.Value,
            ["se_NAP_hanley"] = nap.Estimate.StandardError,
            ["se_NAP_unbiased"] = nap.StandardErrorUnbiased,
            ["se_NAP_null"] = nap.StandardErrorNull,
            ["ci_NAP_newcombe5"] = nap.NearestRoots is { } roots ? new[] { roots.Low, roots.High } : null,
            ["PND"] = PhaseOverlap.PercentageOfNonOverlappingData(a, b, improvement).Value,
            ["PEM"] = PhaseOverlap.PercentageExceedingMedian(a, b, improvement).Value,
            ["PAND"] = PhaseOverlap.PercentageOfAllNonOverlappingData(a, b, improvement).Value,
            ["min_removed"] = PhaseOverlap.FewestRemovals(a, b, improvement),
            ["IRD_robust"] = PhaseOverlap.RobustImprovementRateDifference(a, b, improvement).Value,
            ["S_AB"] = tau.Pairs.S,
            ["S_A"] = tau.TrendA,
            ["S_B"] = tau.TrendB,
            ["tau_AB"] = tau.AgainstPhase.Value,
            ["tau_U_AB_minus_trendA"] = tau.MinusTrendA.Value,
            ["tau_U_AB_plus_trendB_minus_trendA_pairs"] = tau.PlusTrendBMinusTrendA.Value,
            ["tau_AB_plus_trendB_pairs"] = tau.PlusTrendB.Value,
            ["var_S_AB_null"] = tau.NullVariance,
            ["z_S_AB"] = tau.Z,
            ["kendall_tau_b_phase"] = tau.TauBAgainstPhase.Value,
            ["mean_diff"] = rise,
            ["smd_baseline_sd"] = before.StandardDeviation > 0 ? rise / before.StandardDeviation : null,
        };
    }

    private static Dictionary<string, object?> Trend(ReferenceCase c)
    {
        double[] times = c.Numbers("time"), values = c.Numbers("y");
        var trend = MannKendallTrend.Of(times, values);
        var line = TheilSenLine.Fit(times, values);
        return new()
        {
            ["n"] = trend.Count,
            ["S"] = trend.S,
            ["var_S"] = trend.Variance,
            ["tau_a"] = trend.TauA,
            ["tau_b"] = trend.TauB.Value,
            ["z_continuity"] = trend.ZWithContinuity,
            ["p_continuity"] = trend.PWithContinuity,
            ["z_no_continuity"] = trend.ZWithoutContinuity,
            ["theil_sen_slope"] = line.Slope.Value,
            ["theil_sen_intercept_median_residual"] = line.Intercept.Value,
            ["sen_slope_ci"] = new[] { line.Slope.Interval!.Value.Low, line.Slope.Interval!.Value.High },
            ["p_exact"] = trend.PExact,
        };
    }

    private static Dictionary<string, object?> CorrectedTau(ReferenceCase c)
    {
        var tau = BaselineCorrectedTau.Of(c.Numbers("A"), c.Numbers("B"));
        return new()
        {
            ["baseline_S"] = tau.BaselineTrend.S,
            ["baseline_tau_b"] = tau.BaselineTrend.TauB.Value,
            ["baseline_z_no_continuity"] = tau.BaselineTrend.ZWithoutContinuity,
            ["baseline_p_normal"] = tau.BaselineTrend.PWithoutContinuity,
            ["baseline_z_continuity"] = tau.BaselineTrend.ZWithContinuity,
            ["baseline_p_continuity"] = tau.BaselineTrend.PWithContinuity,
            ["theil_sen_slope"] = tau.BaselineLine.Slope.Value,
            ["theil_sen_intercept"] = tau.BaselineLine.Intercept.Value,
            ["residuals"] = tau.Residuals,
            ["tau_b_uncorrected"] = tau.Uncorrected.Value,
            ["tau_b_corrected"] = tau.Corrected.Value,
            ["se_tau_uncorrected"] = tau.Uncorrected.StandardError,
            ["se_tau_corrected"] = tau.Corrected.StandardError,
            ["tau_a_phase_corrected"] = tau.CorrectedTauA,
        };
    }

    private static Dictionary<string, object?> InterruptedSeries(ReferenceCase c)
    {
        var y = c.Numbers("y");
        var before = c.Integer("n_pre");

        // The lag is a choice of the analyst; a case states its own beside the values that follow from it.
        var lag = c.Expects("nw_lag") ? c.Expected.GetProperty("nw_lag").GetInt32() : (int?)null;
        var ols = SegmentedRegression.OrdinaryLeastSquares(y, before);
        var robust = SegmentedRegression.HeteroskedasticityConsistent3(y, before);
        var newey = SegmentedRegression.NeweyWest(y, before, lag);
        var neweySmall = SegmentedRegression.NeweyWest(y, before, lag, smallSample: true);
        var prais = SegmentedRegression.PraisWinsten(y, before);
        var reml = SegmentedLikelihood.RestrictedMaximumLikelihood(y, before);
        var ml = SegmentedLikelihood.MaximumLikelihood(y, before);
        var rest = SeriesResiduals.Of(y, before);
        return new()
        {
            ["coef_order"] = new[] { "intercept", "time", "level_change", "slope_change" },
            ["ols_coef"] = Values(ols),
            ["ols_se"] = Errors(ols),
            ["ols_t"] = ols.Coefficients.Select(b => b.Value / b.StandardError).ToArray(),
            ["ols_p"] = ols.Coefficients.Select(b => b.P).ToArray(),
            ["ols_sigma"] = ols.Sigma,
            ["ols_r2"] = ols.RSquared,
            ["hc3_se"] = Errors(robust),
            ["nw_lag"] = lag,
            ["nw_se"] = Errors(newey),
            ["nw_se_small_sample"] = Errors(neweySmall),
            ["durbin_watson"] = rest.DurbinWatson.Value,
            ["dw_p_two_sided_exact"] = rest.DurbinWatson.P,
            ["lag1_acf_residuals"] = rest.Autocorrelation.Value,
            ["lag1_acf_series"] = LagOneAutocorrelation.Conventional(y).Value,
            ["lag1_acf_residuals_huitema"] = rest.AutocorrelationBiasCorrected.Value,
            ["pw_rho"] = prais.Autocorrelation,
            ["pw_coef"] = Values(prais),
            ["pw_se"] = Errors(prais),
            ["pw_iterations_tolerance"] = SegmentedRegression.PraisWinstenTolerance,
            ["gls_reml_phi"] = reml.Autocorrelation,
            ["gls_reml_coef"] = Values(reml),
            ["gls_reml_se"] = Errors(reml),
            ["gls_reml_sigma"] = reml.Sigma,
            ["gls_ml_phi"] = ml.Autocorrelation,
            ["gls_ml_coef"] = Values(ml),
            ["gls_ml_se_df_n_minus_p"] = Errors(ml),
            ["gls_ml_sigma"] = ml.Sigma,
            ["gls_ml_loglik"] = ml.LogLikelihood,
            ["note"] = reml.Undefined is null ? null : "REML optimum is at the phi=1 boundary for this series: REML values left out",
        };
    }

    private static double?[] Values(SegmentedFit fit) => [.. fit.Coefficients.Select(b => b.Value)];

    private static double?[] Errors(SegmentedFit fit) => [.. fit.Coefficients.Select(b => b.StandardError)];
}
