using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Group;

/// <summary>The catalogue entries of several players together that give several quantities at once.</summary>
internal static class GroupTables
{
    private delegate Estimate Test(MixedModelFit fit, double[] weights, double confidence);

    private static readonly StatisticSetting RandomSlope =
        new("random-slope", "1 for a random slope of the predictor by subject", 0, 0, 1, true);

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        Meta("meta-analysis-reml", "REML", HeterogeneityEstimator.Reml, "viechtbauer-2007"),
        Meta("meta-analysis-ml", "ML", HeterogeneityEstimator.Ml, "viechtbauer-2007"),
        Meta("meta-analysis-dersimonian-laird", "DerSimonian and Laird", HeterogeneityEstimator.DerSimonianLaird, "dersimonian-laird-1986"),
        Meta("meta-analysis-paule-mandel", "Paule and Mandel", HeterogeneityEstimator.PauleMandel, "paule-mandel-1982"),
        Mixed("mixed-model-terms-satterthwaite", "Satterthwaite's degrees of freedom", "satterthwaite-1946", (fit, weights, c) => fit.Satterthwaite(weights, c)),
        Mixed("mixed-model-terms-kenward-roger", "Kenward and Roger's covariance and degrees of freedom", "kenward-roger-1997", (fit, weights, c) => fit.KenwardRoger(weights, c)),
    ];

    private static StatisticDefinition Meta(string name, string estimator, HeterogeneityEstimator kind, string citation) => new()
    {
        Name = name,
        Title = $"Effects brought together with all measures of heterogeneity, τ² by {estimator}",
        Symbol = "μ̂",
        Family = StatisticFamily.Group,
        What = "Values are effects, one a player, with their sampling variances. Rows: mean effect with normal and Knapp-Hartung interval, common effect, τ² with Q-profile interval, I², H², Q with its p, and three prediction intervals for the next player's true effect.",
        Needs = InputColumns.Value | InputColumns.Variance,
        Direction = EffectDirection.PositiveWhenValuesRise,
        NullValue = 0,
        Assumptions = ["Effects are independent between players.", "Sampling variances are known well.", "True effects are normally distributed between players."],
        CitationKeys = [citation, "knapp-hartung-2003", "higgins-thompson-2002", "higgins-2009", "borenstein-2009"],
        Computation = input => input.Variances!.Any(variance => variance <= 1e-150)
            ? ResultRow.None("needs sampling variances above zero")
            : MetaAnalysis.Of([.. input.Values], [.. input.Variances!], kind, input.Confidence) is { } analysis
                ? Rows(analysis)
                : ResultRow.None($"needs at least 2 effects, got {input.Values.Count}"),
    };

    private static IReadOnlyList<NamedEstimate> Rows(MetaAnalysis analysis)
    {
        if (analysis.RandomEffects.Value is not { } mean)
            return [new("mean", analysis.RandomEffects)];
        return
        [
            new("mean", analysis.RandomEffects),
            new("mean-knapp-hartung", analysis.KnappHartung),
            new("common-effect", analysis.CommonEffect),
            new("tau-squared", analysis.TauSquared),
            ResultRow.Of("i-squared", analysis.ISquared),
            ResultRow.Of("i-squared-from-q", analysis.ISquaredFromQ),
            ResultRow.Of("h-squared", analysis.HSquared),
            ResultRow.WithP("q", analysis.Q, analysis.QP, df: analysis.Count - 1),
            ResultRow.Of("prediction-normal", mean, analysis.PredictionNormal),
            ResultRow.Of("prediction-knapp-hartung", mean, analysis.PredictionKnappHartung),
            ResultRow.Of("prediction-t", mean, analysis.PredictionHiggins, "needs at least 3 effects"),
        ];
    }

    private static StatisticDefinition Mixed(string name, string degrees, string citation, Test test) => new()
    {
        Name = name,
        Title = $"Linear mixed model, all fixed effects and variances, {degrees}",
        Symbol = "β",
        Family = StatisticFamily.Group,
        What = "value = intercept + condition (each against the first) + predictor, as far as these columns are named, + random intercepts of subjects and, with a session column, of sessions in subjects; REML. Without a second condition the first row is the predictor or the intercept.",
        Needs = InputColumns.Value | InputColumns.Subject,
        Direction = EffectDirection.PositiveWhenValuesRise,
        NullValue = 0,
        Assumptions = ["Random effects and errors are normal and independent.", "The relation to the predictor is a straight line."],
        CitationKeys = ["pinheiro-bates-2000", citation],
        Settings = [RandomSlope],
        Computation = input => Terms(input, test),
    };

    private static IReadOnlyList<NamedEstimate> Terms(TidyInput input, Test test)
    {
        var rows = input.Values.Count;
        var effects = Effects(input);
        if (rows <= effects.Count)
            return ResultRow.None($"needs more rows than fixed effects, got {rows} and {effects.Count}");
        var slope = input.Setting("random-slope", 0) == 1;
        if (slope && input.Predictors is null)
            return ResultRow.None("a random slope needs a predictor column");
        int[] sessions = input.Sessions is null ? [] : TidyInput.Index(input.Sessions);
        double[] slopes = slope ? [.. input.Predictors!] : [];
        var data = MixedModelData.Of([.. input.Values], effects, TidyInput.Index(input.Subjects!), sessions, slopes);
        if (MixedModel.IsCollinear(data))
            return ResultRow.None("condition and predictor cannot be told apart: one is a combination of the others");
        var outcome = MixedModel.FitReml(data);
        if (outcome.Fit is not { } fit)
            return ResultRow.None(outcome.Undefined!);
        var note = fit.IsSingular ? "a variance is zero: the data ask for less structure" : null;
        List<NamedEstimate> terms = [];
        for (var i = 0; i < effects.Count; i++)
            terms.Add(new NamedEstimate(effects[i].Name, test(fit, [.. Enumerable.Range(0, effects.Count).Select(j => i == j ? 1.0 : 0)], input.Confidence), note));

        // The intercept says least: it comes last of the terms.
        if (terms.Count > 1)
            terms = [.. terms.Skip(1), terms[0]];
        return
        [
            .. terms,
            ResultRow.Of("variance-subjects", fit.SubjectVariance),
            ResultRow.Of("variance-slopes", fit.SlopeVariance, "no random slope is fitted"),
            ResultRow.Of("covariance-intercept-slope", fit.InterceptSlopeCovariance, "no random slope is fitted"),
            ResultRow.Of("variance-sessions", fit.SessionVariance, "no session column is named"),
            ResultRow.Of("variance-error", fit.ResidualVariance),
            ResultRow.Of("log-likelihood-restricted", fit.LogLikelihood),
            ResultRow.Of("aic", fit.Aic),
            ResultRow.Of("converged", fit.HasConverged ? 1 : 0, note: fit.HasConverged ? "yes" : "no: do not trust these numbers"),
        ];
    }

    private static List<(string Name, double[] Column)> Effects(TidyInput input)
    {
        List<(string, double[])> effects = [("intercept", [.. input.Values.Select(_ => 1.0)])];
        if (input.Conditions is { } conditions)
        {
            foreach (var level in conditions.Distinct(StringComparer.Ordinal).Skip(1))
                effects.Add(($"condition {level}", [.. conditions.Select(condition => condition == level ? 1.0 : 0)]));
        }

        if (input.Predictors is { } predictors)
            effects.Add(("predictor", [.. predictors]));
        return effects;
    }
}
