using SwingStudy.Statistics.Reliability;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Tests.Reference;

internal static class ReliabilityCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("intraclass correlations", c => c.Expects("icc_2_k"), IccValues),
        new("measurement error", c => c.Expects("sem_from_icc31"), ErrorValues),
        new("limits of agreement", c => c.Expects("se_loa_1986"), AgreementValues),
        new("repeated limits of agreement", c => c.Expects("loa_varying_true"), RepeatedAgreementValues),
        new("repeatability", c => c.Expects("repeatability_2rms"), RepeatabilityValues),
        new("concordance", c => c.Expects("ccc_n"), ConcordanceValues),
        new("reliable change", c => c.Expects("rci"), ReliableChangeValues),
        new("Spearman-Brown", c => c.Has("icc_single"), StepUpValues),
    ];

    private static Dictionary<string, object?> IccValues(ReferenceCase c)
    {
        var scores = c.Matrix("scores");
        var table = TrialTable.Of(scores.SelectMany(row => row).ToArray(), scores[0].Length);
        var (oneWay, twoWay) = (IntraclassCorrelation.OneWay(table), IntraclassCorrelation.TwoWay(table));
        var values = new Dictionary<string, object?>
        {
            ["n"] = table.Subjects,
            ["k"] = table.Trials,
            ["MS_subjects"] = table.SubjectMeanSquare,
            ["MS_trials"] = table.TrialMeanSquare,
            ["MS_error"] = table.ErrorMeanSquare,
            ["MS_within"] = table.WithinMeanSquare,
            ["F_trials"] = table.TrialF,
            ["p_trials"] = table.TrialP,
            ["F_oneway"] = oneWay.F,
            ["df_oneway"] = new[] { oneWay.NumeratorDegreesOfFreedom, oneWay.DenominatorDegreesOfFreedom },
            ["p_oneway"] = oneWay.P,
            ["F_twoway"] = twoWay.F,
            ["df_twoway"] = new[] { twoWay.NumeratorDegreesOfFreedom, twoWay.DenominatorDegreesOfFreedom },
            ["p_twoway"] = twoWay.P,
            ["df2_satterthwaite_icc21"] = IntraclassCorrelation.AgreementDegreesOfFreedom(table),
        };
        Add("1_1", IntraclassCorrelation.Icc11(table));
        Add("2_1", IntraclassCorrelation.Icc21(table));
        Add("3_1", IntraclassCorrelation.Icc31(table));
        Add("1_k", IntraclassCorrelation.Icc1k(table));
        Add("2_k", IntraclassCorrelation.Icc2k(table));
        Add("3_k", IntraclassCorrelation.Icc3k(table));
        return values;

        void Add(string form, Estimate icc)
        {
            values["icc_" + form] = icc.Value;
            values["ci_" + form] = Pair(icc.Interval);
        }
    }

    private static Dictionary<string, object?> ErrorValues(ReferenceCase c)
    {
        var scores = c.Matrix("scores");
        var (values, k) = (scores.SelectMany(row => row).ToArray(), scores[0].Length);
        var table = TrialTable.Of(values, k);
        var (typical, agreement) = (MeasurementError.Typical(table), MeasurementError.Agreement(table));
        var logarithmic = MeasurementError.TypicalLogPercent(values, k);
        return new()
        {
            ["sd_total"] = table.TotalStandardDeviation,
            ["grand_mean"] = table.GrandMean,
            ["sem_error"] = typical.Value,
            ["typical_error"] = typical.Value,
            ["ci_typical_error"] = Pair(typical.Interval),
            ["te_df"] = typical.DegreesOfFreedom,
            ["sem_agreement"] = agreement.Value,
            ["sem_from_icc21"] = MeasurementError.FromIcc(table, IntraclassCorrelation.Icc21(table)).Value,
            ["sem_from_icc31"] = MeasurementError.FromIcc(table, IntraclassCorrelation.Icc31(table)).Value,
            ["mdc95_error"] = MeasurementError.SmallestDetectableChange(typical).Value,
            ["mdc95_agreement"] = MeasurementError.SmallestDetectableChange(agreement).Value,
            ["cv_percent"] = MeasurementError.CoefficientOfVariation(table).Value,
            ["log_sd_error"] = logarithmic.Value is { } percent ? Math.Log(1 + (percent / 100)) : null,
            ["log_typical_error_percent"] = logarithmic.Value,
            ["ci_log_te_percent"] = Pair(logarithmic.Interval),
            ["cv_percent_within_subject_rms"] = MeasurementError.WithinSubjectVariation(values, k).Value,
        };
    }

    private static Dictionary<string, object?> AgreementValues(ReferenceCase c)
    {
        var (x, y) = (c.Numbers("x"), c.Numbers("y"));
        var (modern, old) = (BlandAltman.Of(x, y)!, BlandAltman.Of1986(x, y)!);
        var ratios = BlandAltman.OfRatios(x, y);
        return new()
        {
            ["n"] = modern.Count,
            ["bias"] = modern.Bias.Value,
            ["sd_diff"] = modern.StandardDeviation,
            ["loa"] = new[] { modern.Lower.Value, modern.Upper.Value },
            ["loa_2sd"] = new[] { old.Lower.Value, old.Upper.Value },
            ["se_bias"] = modern.Bias.StandardError,
            ["ci_bias"] = Pair(modern.Bias.Interval),
            ["se_loa_1986"] = old.Lower.StandardError,
            ["ci_loa_2sd_lower_1986"] = Pair(old.Lower.Interval),
            ["ci_loa_2sd_upper_1986"] = Pair(old.Upper.Interval),
            ["se_loa_1999"] = modern.Lower.StandardError,
            ["ci_loa_lower_1999"] = Pair(modern.Lower.Interval),
            ["ci_loa_upper_1999"] = Pair(modern.Upper.Interval),
            ["t_bias"] = modern.Bias.Value / modern.Bias.StandardError,
            ["p_bias"] = modern.Bias.P,
            ["slope_diff_on_mean"] = modern.Proportional.Value,
            ["r_diff_mean"] = modern.ProportionalCorrelation,
            ["p_proportional"] = modern.Proportional.P,
            ["log_bias"] = ratios?.Bias.Value,
            ["log_loa_ratio"] = ratios is null ? null : new[] { ratios.Lower.Value, ratios.Upper.Value },
        };
    }

    private static Dictionary<string, object?> RepeatedAgreementValues(ReferenceCase c)
    {
        var subjects = c.Labels("subject");
        var index = subjects.Select(s => Array.IndexOf(subjects, s)).ToArray();
        var analysis = RepeatedBlandAltman.Of(c.Numbers("x"), c.Numbers("y"), index)!;
        return new()
        {
            ["n_subjects"] = analysis.Subjects,
            ["n_pairs"] = analysis.Pairs,
            ["within_var_x"] = analysis.WithinVarianceFirst,
            ["within_var_y"] = analysis.WithinVarianceSecond,
            ["bias_subject_means"] = analysis.BiasOfSubjectMeans,
            ["var_subject_mean_diff"] = analysis.VarianceOfSubjectMeans,
            ["mean_inverse_m"] = analysis.MeanInverseCount,
            ["sd_constant_true"] = analysis.StandardDeviationConstantTrue,
            ["loa_constant_true"] = Pair(analysis.LimitsConstantTrue()),
            ["bias_all_pairs"] = analysis.BiasOfAllPairs,
            ["ms_between_diff"] = analysis.BetweenMeanSquare,
            ["ms_within_diff"] = analysis.WithinMeanSquare,
            ["m0"] = analysis.EffectiveCount,
            ["var_between_diff"] = analysis.BetweenVariance,
            ["sd_varying_true"] = analysis.StandardDeviationVaryingTrue,
            ["loa_varying_true"] = Pair(analysis.LimitsVaryingTrue()),
        };
    }

    private static Dictionary<string, object?> RepeatabilityValues(ReferenceCase c)
    {
        var analysis = Repeatability.Of(c.Numbers("first"), c.Numbers("second"))!;
        return new()
        {
            ["sd_diff"] = analysis.StandardDeviationOfDifferences,
            ["mean_diff"] = analysis.MeanDifference,
            ["sw_zero_mean"] = analysis.WithinSubject,
            ["sw_bias_removed"] = analysis.WithinSubjectBiasRemoved,
            ["repeatability_2sd"] = analysis.TwoStandardDeviations,
            ["repeatability_2rms"] = analysis.TwoRootMeanSquares,
            ["repeatability_196"] = analysis.Coefficient(),
            ["cv_log_method_percent"] = analysis.LogPercent,
        };
    }

    private static Dictionary<string, object?> ConcordanceValues(ReferenceCase c)
    {
        var analysis = Concordance.Of(c.Numbers("x"), c.Numbers("y"))!;
        return new()
        {
            ["n"] = c.Numbers("x").Length,
            ["pearson_r"] = analysis.Pearson,
            ["ccc_n"] = analysis.Coefficient.Value,
            ["ccc_n_minus_1"] = analysis.CoefficientWithSampleDivisor,
            ["bias_correction_Cb_n"] = analysis.BiasCorrection,
            ["scale_shift"] = analysis.ScaleShift,
            ["location_shift"] = analysis.LocationShift,
            ["se_ccc_n"] = analysis.Coefficient.StandardError,
            ["ci_z_n"] = Pair(analysis.Coefficient.Interval),
        };
    }

    private static Dictionary<string, object?> ReliableChangeValues(ReferenceCase c)
    {
        var change = ReliableChange.Of(c.Number("pre"), c.Number("post"), c.Number("sd"), c.Number("reliability"));
        return new()
        {
            ["sem"] = change.StandardErrorOfMeasurement,
            ["s_diff"] = change.StandardErrorOfDifference,
            ["rci"] = change.Index,
            ["reliable_95"] = change.IsReliable,
            ["min_reliable_change_95"] = change.SmallestReliableChange,
        };
    }

    private static Dictionary<string, object?> StepUpValues(ReferenceCase c)
    {
        var (single, k, target) = (c.Numbers("icc_single"), c.Numbers("k"), c.Numbers("target"));
        return new()
        {
            ["icc_k"] = single.Select((r, i) => SpearmanBrown.OfMean(r, k[i]).Value).ToArray(),
            ["k_needed"] = single.Select((r, i) => SpearmanBrown.TrialsNeeded(r, target[i]).Value).ToArray(),
        };
    }

    private static double[]? Pair(Interval? interval) => interval is { } i ? [i.Low, i.High] : null;
}
