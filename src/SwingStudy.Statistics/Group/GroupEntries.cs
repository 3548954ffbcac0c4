using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Group;

/// <summary>The catalogue entries of several players together.</summary>
internal static class GroupEntries
{
    private static readonly string[] MetaAssumptions =
        ["Effects are independent between players.", "Sampling variances are known well.", "True effects are normally distributed between players."];

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        Meta("meta-common-effect", "Common effect, inverse-variance weights", "θ̂", HeterogeneityEstimator.DerSimonianLaird, a => a.CommonEffect, ["borenstein-2009"]),
        Meta("meta-dersimonian-laird", "Mean effect under random effects, τ² by DerSimonian and Laird", "μ̂", HeterogeneityEstimator.DerSimonianLaird, a => a.RandomEffects, ["dersimonian-laird-1986"]),
        Meta("meta-paule-mandel", "Mean effect under random effects, τ² by Paule and Mandel", "μ̂", HeterogeneityEstimator.PauleMandel, a => a.RandomEffects, ["paule-mandel-1982"]),
        Meta("meta-reml", "Mean effect under random effects, τ² by REML", "μ̂", HeterogeneityEstimator.Reml, a => a.RandomEffects, ["viechtbauer-2007"]),
        Meta("meta-ml", "Mean effect under random effects, τ² by ML", "μ̂", HeterogeneityEstimator.Ml, a => a.RandomEffects, ["viechtbauer-2007"]),
        Meta("meta-reml-knapp-hartung", "Mean effect under random effects, τ² by REML, Knapp-Hartung interval", "μ̂", HeterogeneityEstimator.Reml, a => a.KnappHartung, ["knapp-hartung-2003"]),
        Meta("meta-paule-mandel-knapp-hartung", "Mean effect under random effects, τ² by Paule and Mandel, Knapp-Hartung interval", "μ̂", HeterogeneityEstimator.PauleMandel, a => a.KnappHartung, ["knapp-hartung-2003"]),
        Meta("meta-tau-squared-reml", "Variance of true effects between players, REML, Q-profile interval", "τ²", HeterogeneityEstimator.Reml, a => a.TauSquared, ["viechtbauer-2007"], EffectDirection.LargerIsNoisier, 0),
        Meta("meta-i-squared-reml", "Share of heterogeneity in the variance of effects, from REML τ²", "I²", HeterogeneityEstimator.Reml, a => Estimate.Of("meta-i-squared-reml", a.ISquared), ["higgins-thompson-2002"], EffectDirection.LargerIsNoisier, 0, 1),
        new()
        {
            Name = RepeatedMeasuresCorrelation.Method,
            Title = "Correlation within subjects",
            Symbol = "r_rm",
            Family = StatisticFamily.Group,
            What = "Pearson's r of value and predictor after taking each subject's means out; N − n − 1 degrees of freedom.",
            Needs = InputColumns.Value | InputColumns.Predictor | InputColumns.Subject,
            Direction = EffectDirection.None,
            LowerBound = -1,
            UpperBound = 1,
            NullValue = 0,
            Assumptions = ["All subjects share one slope.", "Errors are normal, equal and independent between pairs."],
            CitationKeys = ["bland-altman-1995", "bakdash-marusich-2017"],
            Computation = StatisticDefinition.Single(
                input => RepeatedMeasuresCorrelation.Of([.. input.Predictors!], [.. input.Values], TidyInput.Index(input.Subjects!), input.Confidence)),
        },
        new()
        {
            Name = IndividualResponse.Method,
            Title = "Standard deviation of individual responses",
            Symbol = "SD_IR",
            Family = StatisticFamily.Group,
            What = "√(s²(changes, second condition) − s²(changes, first condition)); values are changes, the first condition is the control. Keeps the sign of the difference.",
            Needs = InputColumns.Value | InputColumns.Condition,
            Direction = EffectDirection.LargerIsNoisier,
            NullValue = 0,
            Assumptions = ["Players are assigned to the groups by chance.", "Changes are normally distributed."],
            CitationKeys = ["hopkins-2015"],
            Computation = StatisticDefinition.Single(input => EntryParts.TwoConditions(
                IndividualResponse.Method, input, (control, cue) => IndividualResponse.Of(control, cue, input.Confidence))),
        },
        Component("variance-component-player-reml", "Variance between players, REML", "σ_p²", fit => fit.SubjectVariance),
        Component("variance-component-session-reml", "Variance between sessions of a player, REML", "σ_s²", fit => fit.SessionVariance),
        Component("variance-component-swing-reml", "Variance between swings of a session, REML", "σ_e²", fit => fit.ResidualVariance),
        Mixed("mixed-model-satterthwaite", "Mean difference of two conditions by a linear mixed model, Satterthwaite's degrees of freedom", (fit, c) => fit.Satterthwaite([0, 1], c), ["pinheiro-bates-2000", "satterthwaite-1946"]),
        Mixed("mixed-model-kenward-roger", "Mean difference of two conditions by a linear mixed model, Kenward and Roger's degrees of freedom", (fit, c) => fit.KenwardRoger([0, 1], c), ["pinheiro-bates-2000", "kenward-roger-1997"]),
    ];

    private static StatisticDefinition Meta(
        string name, string title, string symbol, HeterogeneityEstimator estimator, Func<MetaAnalysis, Estimate> pick, string[] citations,
        EffectDirection direction = EffectDirection.PositiveWhenValuesRise, double lower = double.NegativeInfinity, double upper = double.PositiveInfinity) => new()
        {
            Name = name,
            Title = title,
            Symbol = symbol,
            Family = StatisticFamily.Group,
            What = "Values are effects, one a player, with their sampling variances.",
            Needs = InputColumns.Value | InputColumns.Variance,
            Direction = direction,
            LowerBound = lower,
            UpperBound = upper,
            NullValue = 0,
            Assumptions = MetaAssumptions,
            CitationKeys = citations,
            Computation = StatisticDefinition.Single(
                input => MetaAnalysis.Of([.. input.Values], [.. input.Variances!], estimator, input.Confidence) is { } analysis
                    ? pick(analysis)
                    : Estimate.NotDefined(name, $"needs at least 2 effects, got {input.Values.Count}")),
        };

    private static StatisticDefinition Mixed(string name, string title, Func<MixedModelFit, double, Estimate> pick, string[] citations) => new()
    {
        Name = name,
        Title = title,
        Symbol = "β",
        Family = StatisticFamily.Group,
        What = "value = intercept + condition + random intercepts of subjects and, with a session column, of sessions in subjects; REML.",
        Needs = InputColumns.Value | InputColumns.Condition | InputColumns.Subject,
        Direction = EffectDirection.PositiveWhenValuesRise,
        NullValue = 0,
        Assumptions = ["Random effects and errors are normal and independent.", "All players respond alike up to chance, unless a random slope is fitted."],
        CitationKeys = citations,
        Computation = StatisticDefinition.Single(input => FitTwoConditions(name, input, pick)),
    };

    private static StatisticDefinition Component(string name, string title, string symbol, Func<MixedModelFit, double?> pick) => new()
    {
        Name = name,
        Title = title,
        Symbol = symbol,
        Family = StatisticFamily.Reliability,
        What = "value = mean + player + session in player + swing by restricted maximum likelihood; 0 where the estimate would be negative.",
        Needs = InputColumns.Value | InputColumns.Subject | InputColumns.Session,
        Direction = EffectDirection.LargerIsNoisier,
        LowerBound = 0,
        Assumptions = ["Random effects and errors are normal and independent."],
        CitationKeys = ["pinheiro-bates-2000", "searle-1971"],
        Computation = StatisticDefinition.Single(input => FitNested(name, input, pick)),
    };

    private static Estimate FitNested(string method, TidyInput input, Func<MixedModelFit, double?> pick)
    {
        if (input.Values.Count < 2)
            return Estimate.NotDefined(method, $"needs at least 2 values, got {input.Values.Count}");
        var data = MixedModelData.Of(
            [.. input.Values], [("mean", [.. input.Values.Select(_ => 1.0)])], TidyInput.Index(input.Subjects!), TidyInput.Index(input.Sessions!));
        var outcome = MixedModel.FitReml(data);
        return outcome.Fit is { } fit && pick(fit) is { } value ? Estimate.Of(method, value) : Estimate.NotDefined(method, outcome.Undefined!);
    }

    private static Estimate FitTwoConditions(string method, TidyInput input, Func<MixedModelFit, double, Estimate> pick)
    {
        var conditions = TidyInput.Index(input.Conditions!);
        var levels = conditions.Length == 0 ? 0 : conditions.Max() + 1;
        if (levels != 2 || conditions.Length < 3)
            return Estimate.NotDefined(method, $"needs exactly two conditions and at least 3 values, got {levels} and {conditions.Length}");
        (string, double[])[] effects = [("intercept", [.. conditions.Select(_ => 1.0)]), ("condition", [.. conditions.Select(c => (double)c)])];
        var sessions = input.Sessions is null ? [] : TidyInput.Index(input.Sessions);
        var data = MixedModelData.Of([.. input.Values], effects, TidyInput.Index(input.Subjects!), sessions);
        var outcome = MixedModel.FitReml(data);
        return outcome.Fit is { } fit ? pick(fit, input.Confidence) : Estimate.NotDefined(method, outcome.Undefined!);
    }
}
