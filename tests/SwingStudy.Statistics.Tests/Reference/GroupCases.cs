using SwingStudy.Statistics.Group;
using SwingStudy.Statistics.Planning;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Tests.Reference;

internal static class GroupCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("meta-analysis", c => c.Has("yi") && c.Has("vi"), MetaValues),
        new("adjusted p values", c => c.Has("p") && c.Expects("holm"), AdjustedValues),
        new("pairs for a power", c => c.Has("d_z") && c.Has("target_power"), PowerValues),
    ];

    private static Dictionary<string, object?> MetaValues(ReferenceCase c)
    {
        var (y, v) = (c.Numbers("yi"), c.Numbers("vi"));
        var reml = MetaAnalysis.Of(y, v)!;
        return new()
        {
            ["k"] = reml.Count,
            ["fe_estimate"] = reml.CommonEffect.Value,
            ["fe_se"] = reml.CommonEffect.StandardError,
            ["Q"] = reml.Q,
            ["Q_p"] = reml.QP,
            ["I2_classic"] = 100 * reml.ISquaredFromQ,
            ["tau2_ci_qprofile"] = Pair(reml.TauSquared.Interval),
            ["DL"] = Parts(MetaAnalysis.Of(y, v, HeterogeneityEstimator.DerSimonianLaird)!),
            ["PM"] = Parts(MetaAnalysis.Of(y, v, HeterogeneityEstimator.PauleMandel)!),
            ["ML"] = Parts(MetaAnalysis.Of(y, v, HeterogeneityEstimator.Ml)!),
            ["REML"] = Parts(reml),
        };
    }

    private static Dictionary<string, object?> Parts(MetaAnalysis analysis) => new()
    {
        ["tau2"] = analysis.TauSquared.Value,
        ["estimate"] = analysis.RandomEffects.Value,
        ["se"] = analysis.RandomEffects.StandardError,
        ["ci"] = Pair(analysis.RandomEffects.Interval),
        ["z"] = analysis.RandomEffects.Value / analysis.RandomEffects.StandardError,
        ["p"] = analysis.RandomEffects.P,
        ["I2"] = 100 * analysis.ISquared,
        ["H2"] = analysis.HSquared,
        ["pi_normal"] = Pair(analysis.PredictionNormal),
        ["hk_se"] = analysis.KnappHartung.StandardError,
        ["hk_ci"] = Pair(analysis.KnappHartung.Interval),
        ["hk_t"] = analysis.KnappHartung.Value / analysis.KnappHartung.StandardError,
        ["hk_p"] = analysis.KnappHartung.P,
        ["hk_pi_metafor"] = Pair(analysis.PredictionKnappHartung),
        ["pi_higgins_t_km2"] = Pair(analysis.PredictionHiggins),
    };

    private static Dictionary<string, object?> AdjustedValues(ReferenceCase c)
    {
        var p = c.Numbers("p");
        var (holm, bh, bonferroni) = (Multiplicity.Holm(p), Multiplicity.BenjaminiHochberg(p), Multiplicity.Bonferroni(p));
        return new()
        {
            ["bonferroni"] = bonferroni,
            ["holm"] = holm,
            ["hochberg"] = Multiplicity.Hochberg(p),
            ["bh"] = bh,
            ["by"] = Multiplicity.BenjaminiYekutieli(p),
            ["n_reject_bh_05"] = bh.Count(x => x <= 0.05),
            ["n_reject_holm_05"] = holm.Count(x => x <= 0.05),
            ["n_reject_bonferroni_05"] = bonferroni.Count(x => x <= 0.05),
            ["n_reject_hochberg_05"] = Multiplicity.Hochberg(p).Count(x => x <= 0.05),
        };
    }

    private static Dictionary<string, object?> PowerValues(ReferenceCase c)
    {
        var (change, alpha, isTwoSided) = (c.Number("d_z"), c.Number("alpha"), c.Text("alternative") == "two.sided");
        var needed = PairsNeeded.For(change, c.Number("target_power"), alpha, isTwoSided)!;
        return new()
        {
            ["n_exact"] = needed.Exact,
            ["n_ceiling"] = needed.Pairs,
            ["power"] = c.Numbers("n").Select(n => PairsNeeded.Power(change, n, alpha, isTwoSided)).ToArray(),
        };
    }

    private static double[]? Pair(Interval? interval) => interval is { } i ? [i.Low, i.High] : null;
}
