using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Group;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Reliability;

/// <summary>The catalogue entries of reliability and agreement that give several quantities at once, or rest on settings alone.</summary>
internal static class ReliabilityTables
{
    private const InputColumns PairColumns = InputColumns.Value | InputColumns.Subject | InputColumns.Condition;
    private const string Lack = "needs at least 2 players, a player with 2 sessions and a session with 2 swings";

    private static readonly StatisticSetting Coverage = new("coverage", "share of differences that the limits shall hold", 0.95, 0.01, 0.9999);
    private static readonly StatisticSetting Single = new("reliability", "reliability of one trial", Least: -1, Most: 1) { Example = 0.7 };

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        Agreement("bland-altman", "Limits of agreement: bias, both limits, proportional bias", "bias ∓ z SD of the differences.", [Coverage],
            (x, y, input) => BlandAltman.Of(x, y, input.Confidence, input.Setting("coverage", 0.95))),
        Agreement("bland-altman-1986", "Limits of agreement as in 1986: 2 SD, SE of a limit SD √(3/n)", "bias ∓ 2 SD of the differences.", [],
            (x, y, input) => BlandAltman.Of1986(x, y, input.Confidence)),
        Agreement("bland-altman-ratio", "Limits of agreement of the ratio of two sources", "Limits of the logarithms, back-transformed; the proportional part is of the logarithms.", [Coverage],
            (x, y, input) => BlandAltman.OfRatios(x, y, input.Confidence, input.Setting("coverage", 0.95))),
        Repeated("bland-altman-repeated-constant-true", "Limits of agreement, several pairs a subject, true value constant within a subject", "bland-altman-1999",
            "The true value of a subject stays the same.", (a, c) => (a.BiasOfSubjectMeans, a.StandardDeviationConstantTrue, a.LimitsConstantTrue(c))),
        Repeated("bland-altman-repeated-varying-true", "Limits of agreement, several pairs a subject, true value varying from pair to pair", "bland-altman-2007",
            "Pairs of a subject are exchangeable.", (a, c) => (a.BiasOfAllPairs, a.StandardDeviationVaryingTrue, a.LimitsVaryingTrue(c))),
        Entry("reliable-change-index", "Reliable change index of each person", "RCI", "(after − before)/(√2 s √(1 − r)); reliable when beyond z. The first row is the smallest reliable change, then one row a person.",
            PairColumns, EffectDirection.None, 0, double.PositiveInfinity, ["The reliability holds for these persons.", "Errors are normal and equal for all persons."], ["jacobson-truax-1991"],
            [
                new("reliability", "reliability of the score", Least: 0, Most: 1) { Example = 0.8 },
                new("standard-deviation", "spread of the reference group; without it, that of the values before", Least: 0),
            ],
            input => EntryParts.PairRows(input, input.Subjects!, (persons, before, after) => ReliableChanges(input, persons, before, after))),
        Entry("spearman-brown", "Reliability of a mean of k trials (Spearman-Brown)", "r_k", "k r/(1 + (k − 1) r).", InputColumns.None, EffectDirection.LargerIsCloser,
            double.NegativeInfinity, 1, ["Trials are parallel: equal true values and errors."], ["spearman-1910"],
            [Single, new("trials", "number k of trials averaged; may be a fraction", Least: 1e-6, Most: 1e9) { Example = 3 }],
            StatisticDefinition.Single(input => SpearmanBrown.OfMean(input.Setting("reliability", 0), input.Setting("trials", 1)))),
        Entry("spearman-brown-trials-needed", "Trials needed for a reliability (Spearman-Brown)", "k", "t (1 − r)/(r (1 − t)), not rounded up.", InputColumns.None, EffectDirection.None,
            0, double.PositiveInfinity, ["Trials are parallel: equal true values and errors."], ["spearman-1910"],
            [Single, new("target", "reliability wanted", Least: 0.001, Most: 0.9999) { Example = 0.9 }],
            StatisticDefinition.Single(input => SpearmanBrown.TrialsNeeded(input.Setting("reliability", 0), input.Setting("target", 0.5)))),
        Components("variance-components-anova", "nested analysis of variance, negative ones stated as 0", ["searle-1971", "shavelson-webb-1991"], input =>
            (NestedAnova.Of([.. input.Values], TidyInput.Index(input.Subjects!), TidyInput.Index(input.Sessions!))?.Components, Lack)),
        Components("variance-components-reml", "restricted maximum likelihood", ["pinheiro-bates-2000", "shavelson-webb-1991"], Reml),
    ];

    private static (VarianceComponents?, string) Reml(TidyInput input)
    {
        if (input.Values.Count < 2)
            return (null, $"needs at least 2 values, got {input.Values.Count}");
        var outcome = MixedModel.FitReml(MixedModelData.Of(
            [.. input.Values], [("mean", [.. input.Values.Select(_ => 1.0)])], TidyInput.Index(input.Subjects!), TidyInput.Index(input.Sessions!)));
        return (outcome.Fit?.Components, outcome.Undefined ?? Lack);
    }

    private static StatisticDefinition Components(string name, string by, string[] citations, Func<TidyInput, (VarianceComponents? Components, string Lack)> estimate) =>
        Entry(name, $"Variances between players, sessions and swings by {by}, and what follows for means of k swings over m sessions", "σ²",
            "value = mean + player + session in player + swing. Rows: the three variances, reliabilities, SEM and smallest detectable change of a mean, and the sessions and swings needed for a reliability.",
            InputColumns.Value | InputColumns.Subject | InputColumns.Session, EffectDirection.LargerIsNoisier, 0, double.PositiveInfinity,
            ["Effects of players, sessions and swings are independent, with constant variances.", "Swings of a session are independent of each other.",
                "The smallest detectable change takes the variances as known."], citations,
            [
                new("swings", "swings k of a session", 10, 1, 1e6),
                new("sessions", "sessions m", 1, 1, 1e6),
                new("target", "reliability wanted", 0.9, 0.001, 0.9999),
            ],
            input => estimate(input) is var (components, lack) && components is not null ? Rows(components, input) : ResultRow.None(lack));

    private static IReadOnlyList<NamedEstimate> Rows(VarianceComponents components, TidyInput input)
    {
        double k = input.Setting("swings", 10), m = input.Setting("sessions", 1), target = input.Setting("target", 0.9);
        const string constant = "nothing varies";
        return
        [
            ResultRow.Of("variance-player", components.Player, note: components.IsTruncated ? "a variance ran into zero" : null),
            ResultRow.Of("variance-session", components.Session),
            ResultRow.Of("variance-swing", components.Swing),
            ResultRow.Of("reliability-within-session", components.ReliabilityWithinSession, constant),
            ResultRow.Of("reliability-between-sessions", components.ReliabilityBetweenSessions, constant),
            ResultRow.Of("reliability-of-mean", components.Reliability(m, k), constant),
            ResultRow.Of("sem-of-mean", Math.Sqrt(components.ErrorVarianceOfMean(m, k))),
            ResultRow.Of("smallest-detectable-change", components.SmallestDetectableChange(m, k, input.Confidence)),
            ResultRow.Of("sessions-needed", components.SessionsNeeded(target, k), "players do not differ"),
            ResultRow.Of("swings-needed", components.SwingsNeeded(target, m), "no number of swings in so many sessions is enough, or players do not differ"),
        ];
    }

    private static IReadOnlyList<NamedEstimate> ReliableChanges(TidyInput input, string[] persons, double[] before, double[] after)
    {
        double? spread = input.Settings.TryGetValue("standard-deviation", out var given) ? given : Summary.Of(before).StandardDeviation;
        if (persons.Length == 0 || spread is not { } deviation)
            return ResultRow.None("needs a pair, and two pairs or the setting standard-deviation");
        ReliableChange[] changes = [.. before.Zip(after, (b, a) => ReliableChange.Of(b, a, deviation, input.Setting("reliability", 0), input.Confidence))];
        return
        [
            ResultRow.Of("smallest-reliable-change", changes[0].SmallestReliableChange),
            ResultRow.Of("sem", changes[0].StandardErrorOfMeasurement),
            .. changes.Select((change, i) => ResultRow.Of(
                persons[i], change.Index, "the measure has no error", change.IsReliable ? "reliable" : "within what error alone gives")),
        ];
    }

    private static StatisticDefinition Agreement(
        string name, string title, string what, StatisticSetting[] settings, Func<double[], double[], TidyInput, BlandAltman?> analyse) =>
        Entry(name, title, "bias", $"{what} Differences are first − second source.", PairColumns, EffectDirection.PositiveWhenFirstIsHigher,
            double.NegativeInfinity, double.PositiveInfinity, ["Pairs are independent, one a subject.", "Differences are normally distributed and do not grow with the value."],
            ["bland-altman-1999", "bland-altman-1986"], settings,
            input => EntryParts.PairRows(input, (x, y) => analyse(x, y, input) is { } analysis
                ?
                [
                    new("bias", analysis.Bias),
                    new("lower-limit", analysis.Lower),
                    new("upper-limit", analysis.Upper),
                    ResultRow.Of("sd-of-differences", analysis.StandardDeviation),
                    new("proportional-bias", analysis.Proportional),
                    ResultRow.Of("correlation-of-difference-and-mean", analysis.ProportionalCorrelation, "differences or means never vary"),
                ]
                : ResultRow.None($"needs at least 3 pairs (above zero for ratios), got {x.Length}")));

    private static StatisticDefinition Repeated(
        string name, string title, string citation, string assumption, Func<RepeatedBlandAltman, double, (double Bias, double Deviation, Interval Limits)> pick) =>
        Entry(name, title, "bias", "Differences are first − second source; a pair is one subject and session with both sources. The bias carries no interval here.",
            PairColumns | InputColumns.Session, EffectDirection.PositiveWhenFirstIsHigher, double.NegativeInfinity, double.PositiveInfinity,
            [assumption, "Differences are normally distributed and do not grow with the value."], [citation], [Coverage],
            input => OfRepeated(input, pick));

    private static IReadOnlyList<NamedEstimate> OfRepeated(TidyInput input, Func<RepeatedBlandAltman, double, (double Bias, double Deviation, Interval Limits)> pick)
    {
        string[] labels = [.. input.Subjects!.Zip(input.Sessions!, (subject, session) => subject + "\n" + session)];
        return EntryParts.PairRows(input, labels, (pairs, x, y) =>
        {
            var subjects = TidyInput.Index([.. pairs.Select(pair => pair[..pair.LastIndexOf('\n')])]);
            if (x.Zip(y, (a, b) => Math.Abs(a - b)).Any(difference => difference > Finite.Largest))
                return ResultRow.None("differences are too large to be measurements");
            if (RepeatedBlandAltman.Of(x, y, subjects) is not { } analysis)
                return ResultRow.None("needs at least two subjects, and one with two pairs");
            var (bias, deviation, limits) = pick(analysis, input.Setting("coverage", 0.95));
            return
            [
                ResultRow.Of("bias", bias),
                ResultRow.Of("lower-limit", limits.Low),
                ResultRow.Of("upper-limit", limits.High),
                ResultRow.Of("sd-of-single-difference", deviation),
                ResultRow.Of("within-variance-first", analysis.WithinVarianceFirst),
                ResultRow.Of("within-variance-second", analysis.WithinVarianceSecond),
                ResultRow.Of("between-variance-of-differences", analysis.BetweenVariance, note: analysis.BetweenVariance < 0 ? "taken as 0 in the limits" : null),
                ResultRow.Of("subjects", analysis.Subjects),
                ResultRow.Of("pairs", analysis.Pairs),
            ];
        });
    }

    private static StatisticDefinition Entry(
        string name, string title, string symbol, string what, InputColumns needs, EffectDirection direction, double lower, double upper,
        string[] assumptions, string[] citations, StatisticSetting[] settings, Func<TidyInput, IReadOnlyList<NamedEstimate>> compute) => new()
        {
            Name = name,
            Title = title,
            Symbol = symbol,
            Family = direction == EffectDirection.PositiveWhenFirstIsHigher ? StatisticFamily.Agreement : StatisticFamily.Reliability,
            What = what,
            Needs = needs,
            Direction = direction,
            LowerBound = lower,
            UpperBound = upper,
            Assumptions = assumptions,
            CitationKeys = citations,
            Settings = settings,
            Computation = compute,
        };
}
