using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Resampling;

/// <summary>The catalogue entries of bootstrap intervals.</summary>
internal static class BootstrapEntries
{
    private const string Independence = "Values are independent of each other; where sessions matter, draw sessions.";
    internal static readonly StatisticSetting Resamples = new("resamples", "number of resamples", 9999, 1, 10_000_000, true);

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        Entry("mean-bootstrap-percentile", "Mean, percentile interval", "x̄", "Mean; quantiles of the means of resampled values.", InputColumns.Value,
            EffectDirection.None, [Independence], ["davison-hinkley-1997"], null, input => Percentile("mean-bootstrap-percentile", new MeanStatistic([.. input.Values]), input)),
        Entry("mean-bootstrap-bca", "Mean, bias-corrected and accelerated interval", "x̄", "Mean; BCa interval with the jackknife acceleration.", InputColumns.Value,
            EffectDirection.None, [Independence], ["efron-1987"], null, input => Accelerated("mean-bootstrap-bca", input)),
        Entry(StudentizedMean.Method, "Mean, studentized interval", "x̄", "Mean; quantiles of the studentized deviations of resampled means.", InputColumns.Value,
            EffectDirection.None, [Independence], ["hall-1988"], null,
            input => StudentizedMean.Of([.. input.Values], new Xoshiro256(input.Seed), ResamplingEntries.Count(input), input.Confidence)),
        Entry("median-bootstrap-percentile", "Median, percentile interval", "x̃", "Median; quantiles of the medians of resampled values.", InputColumns.Value,
            EffectDirection.None, [Independence], ["davison-hinkley-1997"], null, input => Percentile("median-bootstrap-percentile", new MedianStatistic([.. input.Values]), input)),
        Entry(HedgesGBootstrap.BcaMethod, "Hedges' g by the pooled standard deviation, BCa interval", "g", "J(n₁ + n₂ − 2) d with the exact J; each condition resampled by itself.",
            InputColumns.Value | InputColumns.Condition, EffectDirection.PositiveWhenValuesRise, [Independence], ["hedges-olkin-1985", "efron-1987"], 0,
            input => EntryParts.TwoConditions(HedgesGBootstrap.BcaMethod, input, (before, after) => HedgesGBootstrap.Bca(
                before, after, new Xoshiro256(input.Seed), ResamplingEntries.Count(input), input.Confidence))),
        Entry("mean-difference-session-bootstrap-percentile", "Mean difference, whole sessions resampled", "Δx̄",
            "mean(second condition) − mean(first) over all values; sessions drawn with replacement within each condition, percentile interval.",
            InputColumns.Value | InputColumns.Condition | InputColumns.Session, EffectDirection.PositiveWhenValuesRise,
            ["Sessions of a condition are independent of each other; few sessions give intervals that are too short."], ["field-welsh-2007"], 0, Sessions),
        Kinds("mean-bootstrap", "Mean, every kind of bootstrap interval", "x̄", InputColumns.Value, EffectDirection.None, input => new MeanStatistic([.. input.Values])),
        Kinds("median-bootstrap", "Median, every kind of bootstrap interval", "x̃", InputColumns.Value, EffectDirection.None, input => new MedianStatistic([.. input.Values])),
        Kinds("correlation-bootstrap", "Correlation of value and predictor, every kind of bootstrap interval", "r", InputColumns.Value | InputColumns.Predictor,
            EffectDirection.PositiveWhenValuesRise, input => new CorrelationStatistic([.. input.Predictors!], [.. input.Values])),
    ];

    private static StatisticDefinition Kinds(
        string name, string title, string symbol, InputColumns needs, EffectDirection direction, Func<TidyInput, RowStatistic> statisticOf) =>
        Table(name, title, symbol, "Rows are resampled, or whole sessions of subjects when a session column is named: percentile, basic and BCa interval, bias and standard error.",
            needs, direction, [Independence], ["davison-hinkley-1997", "efron-1979", "efron-1987"], null, input => AllKinds(statisticOf(input), input));

    private static IReadOnlyList<NamedEstimate> AllKinds(RowStatistic statistic, TidyInput input)
    {
        var rows = input.Values.Count;
        int[] clusters = input.Sessions is { } sessions
            ? TidyInput.Index([.. sessions.Select((session, row) => input.Subjects is { } subjects ? subjects[row] + "\n" + session : session)])
            : [.. Enumerable.Range(0, rows)];
        if (rows == 0 || Bootstrap.Clusters(statistic, clusters, new int[rows], new Xoshiro256(input.Seed), ResamplingEntries.Count(input)) is not { } run)
            return ResultRow.None("needs values that support the statistic");
        var (distribution, level) = (run.Distribution, input.Confidence);
        var bca = run.Jackknife is { } jackknife ? distribution.Bca(jackknife.Acceleration, level, tiesHalf: true) : null;
        return
        [
            new("percentile", Estimate.Of("", distribution.Observed, distribution.StandardError, distribution.Percentile(level))),
            new("basic", Estimate.Of("", distribution.Observed, distribution.StandardError, distribution.Basic(level))),
            new("bca", bca is { } interval
                ? Estimate.Of("", distribution.Observed, distribution.StandardError, interval)
                : Estimate.NotDefined("", "all resamples lie on one side of the observed value, or a limit leaves the scale")),
            ResultRow.Of("bias", distribution.Bias),
            ResultRow.Of("acceleration", run.Jackknife?.Acceleration, "needs a statistic without each row in turn"),
            ResultRow.Of("resamples-left-out", run.LeftOut, note: run.LeftOut > 0 ? "these did not support the statistic" : null),
        ];
    }

    private static Estimate Percentile(string name, RowStatistic statistic, TidyInput input) =>
        Bootstrap.Rows(statistic, new Xoshiro256(input.Seed), ResamplingEntries.Count(input)) is { } run
            ? Estimate.Of(name, run.Distribution.Observed, run.Distribution.StandardError, run.Distribution.Percentile(input.Confidence))
            : Estimate.NotDefined(name, "needs at least one value, got none");

    private static Estimate Accelerated(string name, TidyInput input)
    {
        if (Bootstrap.Rows(new MeanStatistic([.. input.Values]), new Xoshiro256(input.Seed), ResamplingEntries.Count(input)) is not { } run)
            return Estimate.NotDefined(name, "needs at least one value, got none");
        var interval = run.Jackknife is { } jackknife ? run.Distribution.Bca(jackknife.Acceleration, input.Confidence, tiesHalf: true) : null;
        return Estimate.Of(name, run.Distribution.Observed, run.Distribution.StandardError, interval);
    }

    private static Estimate Sessions(TidyInput input)
    {
        const string Name = "mean-difference-session-bootstrap-percentile";
        var conditions = TidyInput.Index(input.Conditions!);
        if (conditions.Length == 0 || conditions.Max() != 1)
            return Estimate.NotDefined(Name, "needs exactly two conditions");
        var clusters = TidyInput.Index([.. input.Conditions!.Zip(input.Sessions!, (condition, session) => condition + "\n" + session)
            .Select((label, row) => input.Subjects is { } subjects ? label + "\n" + subjects[row] : label)]);
        var statistic = new PhaseDifferenceStatistic([.. input.Values], [.. conditions.Select(condition => condition == 1)]);
        return Bootstrap.Clusters(statistic, clusters, conditions, new Xoshiro256(input.Seed), ResamplingEntries.Count(input)) is { } run
            ? Estimate.Of(Name, run.Distribution.Observed, run.Distribution.StandardError, run.Distribution.Percentile(input.Confidence))
            : Estimate.NotDefined(Name, "needs a value in each condition");
    }

    private static StatisticDefinition Entry(
        string name, string title, string symbol, string what, InputColumns needs, EffectDirection direction, string[] assumptions, string[] citations,
        double? none, Func<TidyInput, Estimate> compute) =>
        Table(name, title, symbol, what, needs, direction, assumptions, citations, none, StatisticDefinition.Single(compute));

    private static StatisticDefinition Table(
        string name, string title, string symbol, string what, InputColumns needs, EffectDirection direction, string[] assumptions, string[] citations,
        double? none, Func<TidyInput, IReadOnlyList<NamedEstimate>> compute) => new()
        {
            Name = name,
            Title = title,
            Symbol = symbol,
            Family = StatisticFamily.Bootstrap,
            What = what,
            Needs = needs,
            Direction = direction,
            NullValue = none,
            Assumptions = assumptions,
            CitationKeys = citations,
            Settings = [Resamples],
            Computation = compute,
        };
}
