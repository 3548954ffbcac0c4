using SwingStudy.Statistics.Group;
using SwingStudy.Statistics.Reliability;

namespace SwingStudy.Statistics.Tests.Reference;

internal static class MixedModelCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("linear mixed model", c => c.Has("formula"), MixedModelValues),
        new("nested variance components", c => c.Expects("anova_var_subject"), NestedValues),
    ];

    private static Dictionary<string, object?> MixedModelValues(ReferenceCase c)
    {
        var (y, x, labels) = (c.Numbers("y"), c.Numbers("x"), c.Labels("group"));
        var groups = labels.Distinct().ToList();
        var hasSlope = c.Text("formula").Contains("(x |", StringComparison.Ordinal);
        var data = MixedModelData.Of(
            y,
            [("intercept", [.. y.Select(_ => 1.0)]), ("x", x)],
            labels.Select(l => groups.IndexOf(l)).ToArray(),
            slope: hasSlope ? x : default(ReadOnlySpan<double>));
        var (reml, ml) = (MixedModel.FitReml(data).Fit!, MixedModel.FitMl(data).Fit!);
        var effects = new[] { reml.Satterthwaite([1, 0]), reml.Satterthwaite([0, 1]) };
        var adjusted = new[] { reml.KenwardRoger([1, 0]), reml.KenwardRoger([0, 1]) };
        var random = reml.PredictRandomEffects();
        return new()
        {
            ["n_obs"] = data.Count,
            ["n_groups"] = data.SubjectCount,
            ["fixef"] = reml.Coefficients,
            ["se"] = effects.Select(e => e.StandardError).ToArray(),
            ["vcov_fixed"] = Rows(reml.CoefficientCovariance()),
            ["t"] = effects.Select(e => e.Value / e.StandardError).ToArray(),
            ["satterthwaite_df"] = effects.Select(e => e.DegreesOfFreedom).ToArray(),
            ["satterthwaite_p"] = effects.Select(e => e.P).ToArray(),
            ["kr_se"] = adjusted.Select(e => e.StandardError).ToArray(),
            ["kr_df"] = adjusted.Select(e => e.DegreesOfFreedom).ToArray(),
            ["kr_p"] = adjusted.Select(e => e.P).ToArray(),
            ["vcov_kr"] = Rows(reml.KenwardRogerCovariance()!),
            ["var_intercept"] = reml.SubjectVariance,
            ["residual_var"] = reml.ResidualVariance,
            ["reml_criterion"] = reml.Deviance,
            ["reml_loglik"] = reml.LogLikelihood,
            ["ml_fixef"] = ml.Coefficients,
            ["ml_var_intercept"] = ml.SubjectVariance,
            ["ml_residual_var"] = ml.ResidualVariance,
            ["ml_loglik"] = ml.LogLikelihood,
            ["ml_aic"] = ml.Aic,
            ["ml_bic"] = ml.Bic,
            ["blup_intercept"] = random.Intercepts,
            ["blup_slope"] = random.Slopes,
            ["group_labels"] = groups,
            ["singular"] = reml.IsSingular,
            ["var_slope"] = reml.SlopeVariance,
            ["cov_intercept_slope"] = reml.InterceptSlopeCovariance,
            ["cor_intercept_slope"] = reml.SubjectVariance * reml.SlopeVariance is > 0 and var product ? reml.InterceptSlopeCovariance / Math.Sqrt(product) : null,
            ["ml_var_slope"] = ml.SlopeVariance,
            ["ml_cov_intercept_slope"] = ml.InterceptSlopeCovariance,
            ["sd_intercept"] = Math.Sqrt(reml.SubjectVariance),
            ["sd_slope"] = reml.SlopeVariance is { } slope ? Math.Sqrt(slope) : null,
            ["sd_residual"] = Math.Sqrt(reml.ResidualVariance),
        };
    }

    private static Dictionary<string, object?> NestedValues(ReferenceCase c)
    {
        var y = c.Numbers("y");
        var (subjects, sessions) = (Index(c.Labels("subject")), Index(c.Labels("session")));
        var anova = NestedAnova.Of(y, subjects, sessions)!;
        var data = MixedModelData.Of(y, [("intercept", [.. y.Select(_ => 1.0)])], subjects, sessions);
        var (reml, ml) = (MixedModel.FitReml(data).Fit!, MixedModel.FitMl(data).Fit!);
        var components = reml.Components!;
        return new()
        {
            ["n_obs"] = anova.Count,
            ["n_subjects"] = anova.Subjects,
            ["n_sessions"] = anova.Sessions,
            ["df"] = new[] { anova.DegreesOfFreedom.Subject, anova.DegreesOfFreedom.Session, anova.DegreesOfFreedom.Trial },
            ["SS"] = new[] { anova.SumsOfSquares.Subject, anova.SumsOfSquares.Session, anova.SumsOfSquares.Trial },
            ["MS"] = new[] { anova.SubjectMeanSquare, anova.SessionMeanSquare, anova.TrialMeanSquare },
            ["k"] = new[] { anova.Coefficients.K1, anova.Coefficients.K2, anova.Coefficients.K3 },
            ["anova_var_subject"] = anova.SubjectVariance,
            ["anova_var_session"] = anova.SessionVariance,
            ["anova_var_trial"] = anova.TrialVariance,
            ["reml_var_subject"] = reml.SubjectVariance,
            ["reml_var_session"] = reml.SessionVariance,
            ["reml_var_trial"] = reml.ResidualVariance,
            ["reml_mean"] = reml.Coefficients[0],
            ["reml_se_mean"] = Math.Sqrt(reml.CoefficientCovariance()[0, 0]),
            ["reml_loglik"] = reml.LogLikelihood,
            ["ml_var_subject"] = ml.SubjectVariance,
            ["ml_var_session"] = ml.SessionVariance,
            ["ml_var_trial"] = ml.ResidualVariance,
            ["ml_loglik"] = ml.LogLikelihood,
            ["icc_single_trial_between_sessions"] = components.ReliabilityBetweenSessions,
            ["icc_same_session"] = components.ReliabilityWithinSession,
            ["singular"] = reml.IsSingular,
        };
    }

    private static int[] Index(string[] labels) => [.. labels.Select(l => Array.IndexOf(labels, l))];

    private static double[][] Rows(double[,] matrix) =>
        [.. Enumerable.Range(0, matrix.GetLength(0)).Select(r => Enumerable.Range(0, matrix.GetLength(1)).Select(c => matrix[r, c]).ToArray())];
}
