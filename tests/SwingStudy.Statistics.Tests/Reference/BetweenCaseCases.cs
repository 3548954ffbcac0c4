using SwingStudy.Statistics.SingleCase;

namespace SwingStudy.Statistics.Tests.Reference;

internal static class BetweenCaseCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("between-case effect by moments, multiple baseline", c => c.Has("treatment") && c.Expects("D_bar"), Moments),
        new("between-case effect by restricted likelihood", c => c.Has("treatment") && c.Expects("tau_sq"), Likelihood),
        new("between-case effect by moments, reversal", c => c.Has("phase_pair") && c.Expects("D_bar"), Reversal),
    ];

    private static Dictionary<string, object?> Moments(ReferenceCase c) =>
        Named(BetweenCaseMoments.MultipleBaseline(Whole(c, "case"), Whole(c, "time"), Treated(c, "treatment", 1), c.Numbers("y")));

    private static Dictionary<string, object?> Reversal(ReferenceCase c) => Named(BetweenCaseMoments.Reversal(
        Whole(c, "case"), Whole(c, "phase_pair"), Treated(c, "condition", 2), Whole(c, "session"), c.Numbers("y")));

    private static Dictionary<string, object?> Likelihood(ReferenceCase c)
    {
        var fit = BetweenCaseLikelihood.MultipleBaseline(Whole(c, "case"), Whole(c, "time"), Treated(c, "treatment", 1), c.Numbers("y"));
        return new()
        {
            ["beta"] = fit.Coefficients,
            ["se_beta"] = fit.StandardErrors,
            ["tau_sq"] = fit.Effect.BetweenVariance,
            ["sigma_sq"] = fit.Effect.WithinVariance,
            ["phi"] = fit.Effect.Autocorrelation,
            ["reml_loglik"] = fit.LogLikelihood,
            ["info_inverse"] = fit.InverseInformation,
            ["nu"] = fit.Effect.DegreesOfFreedom,
            ["kappa"] = fit.Effect.ChangeError,
            ["delta"] = fit.Effect.Unadjusted,
            ["g"] = fit.Effect.Effect.Value,
            ["var_g"] = fit.Effect.Variance,
            ["se_g"] = fit.Effect.Effect.StandardError,
        };
    }

    private static Dictionary<string, object?> Named(BetweenCaseEffect effect) => new()
    {
        ["n_obs"] = effect.Count,
        ["n_cases"] = effect.Cases,
        ["K"] = effect.Cells,
        ["M_dot"] = effect.Cells,
        ["D_bar"] = effect.RawChange,
        ["S_sq"] = effect.TotalVariance,
        ["delta_unadjusted"] = effect.Unadjusted,
        ["phi"] = effect.Autocorrelation,
        ["sigma_sq_within"] = effect.WithinVariance,
        ["rho"] = effect.IntraclassCorrelation,
        ["theta"] = effect.ChangeError,
        ["nu"] = effect.DegreesOfFreedom,
        ["J_nu"] = effect.Effect.Value / effect.Unadjusted,
        ["g"] = effect.Effect.Value,
        ["var_g"] = effect.Variance,
        ["se_g"] = effect.Effect.StandardError,
    };

    private static int[] Whole(ReferenceCase c, string input) => [.. c.Numbers(input).Select(x => (int)x)];

    private static bool[] Treated(ReferenceCase c, string input, int code) => [.. c.Numbers(input).Select(x => x == code)];
}
