using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Change;

/// <summary>The catalogue entries of what surrounds a player's change: the trend before it, and the share that is kept.</summary>
internal static class SessionEntries
{
    private const string EqualScatter = "Session means scatter alike in all phases and independently of each other.";

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        new()
        {
            Name = ShareKept.Method,
            Title = "Share of a change that is kept or carries over",
            Symbol = "r",
            Family = StatisticFamily.Change,
            What = "(third − first)/(second − first) of the means of three conditions in order of appearance; one row is one session mean. Fieller's interval from the pooled scatter; none where second − first may be zero.",
            Needs = InputColumns.Value | InputColumns.Condition,
            Direction = EffectDirection.None,
            NullValue = null,
            Assumptions = [EqualScatter, "The change in the second condition is not zero."],
            CitationKeys = ["fieller-1954"],
            Computation = StatisticDefinition.Single(Share),
        },
        new()
        {
            Name = BaselineSlope.Method,
            Title = "Slope of the session means before a change, with the noise of the change",
            Symbol = "b",
            Family = StatisticFamily.Change,
            What = "Least-squares slope of the session means of the first condition; SE from the session and swing variance by which the change itself is judged, t with its degrees of freedom.",
            Needs = InputColumns.Value | InputColumns.Condition | InputColumns.Session,
            Direction = EffectDirection.PositiveWhenValuesRise,
            NullValue = 0,
            Assumptions = [EqualScatter, "Sessions follow each other at about equal distances."],
            CitationKeys = ["searle-1971", "satterthwaite-1946"],
            Computation = StatisticDefinition.Single(Slope),
        },
        new()
        {
            Name = TrendFreeChange.Method,
            Title = "What is left of a change when a steady trend from session to session is taken off",
            Symbol = "Δ",
            Family = StatisticFamily.Change,
            What = "Difference of the means of session means of two conditions less the common slope within conditions times the distance of their mean places; sessions in order of appearance.",
            Needs = InputColumns.Value | InputColumns.Condition | InputColumns.Session,
            Direction = EffectDirection.PositiveWhenValuesRise,
            NullValue = 0,
            Assumptions = [EqualScatter, "The trend is the same in both conditions.", "Sessions follow each other at about equal distances."],
            CitationKeys = ["snedecor-cochran-1989", "satterthwaite-1946"],
            Computation = LeftOfTrend,
        },
    ];

    private static Estimate Share(TidyInput input)
    {
        var conditions = input.ByCondition();
        if (conditions.Count != 3)
            return Estimate.NotDefined(ShareKept.Method, $"needs exactly three conditions, got {conditions.Count}");
        Summary[] summaries = [.. conditions.Select(condition => Summary.OfChecked(condition.Values))];
        var df = summaries.Sum(summary => summary.Count - 1);
        var variance = df > 0 ? summaries.Sum(summary => summary.SumOfSquares) / df : double.NaN;
        return ShareKept.Of(Difference(0, 1), Difference(0, 2), Difference(1, 2), input.Confidence);

        Estimate Difference(int from, int to) => Estimate.Of(
            "", summaries[to].MeanMinus(summaries[from]), Math.Sqrt(variance * ((1.0 / summaries[from].Count) + (1.0 / summaries[to].Count))),
            degreesOfFreedom: df > 0 ? df : null);
    }

    private static IReadOnlyList<NamedEstimate> LeftOfTrend(TidyInput input)
    {
        var (conditions, sessions) = (TidyInput.Index(input.Conditions!), TidyInput.Index(input.Sessions!));
        if (conditions.Length > 0 && conditions.Max() > 1)
            return ResultRow.None($"needs exactly two conditions, got {conditions.Max() + 1}");
        var change = HonestChangeRule.Judge(ChangeData.Of([.. input.Values], sessions, conditions), StudyNoise.Unknown, confidence: input.Confidence);
        var series = Enumerable.Range(0, input.Values.Count).GroupBy(i => (sessions[i], conditions[i]))
            .Select(group => new PhaseSession(group.Key.Item1, group.Key.Item2, [.. group.Select(i => input.Values[i])]));
        var free = TrendFreeChange.Of([.. series], change, input.Confidence);
        return [new("left", free.Left), new("slope", free.Slope), ResultRow.Of("distance", double.IsNaN(free.Distance) ? null : free.Distance, "needs both conditions")];
    }

    private static Estimate Slope(TidyInput input)
    {
        var conditions = TidyInput.Index(input.Conditions!);
        if (conditions.Length > 0 && conditions.Max() > 1)
            return Estimate.NotDefined(BaselineSlope.Method, $"needs exactly two conditions, got {conditions.Max() + 1}");
        var data = ChangeData.Of([.. input.Values], TidyInput.Index(input.Sessions!), conditions);
        return BaselineSlope.Of(data, HonestChangeRule.Judge(data, StudyNoise.Unknown, confidence: input.Confidence), input.Confidence);
    }
}
