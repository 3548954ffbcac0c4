using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Resampling;

/// <summary>The catalogue entries of permutation, rank and randomization tests.</summary>
internal static class ResamplingEntries
{
    private const string Exchangeable = "Values could as well have come with the other condition: independent, of the same shape.";
    private const string Symmetric = "Without effect, changes scatter symmetrically about zero and independently of each other.";
    private const string Drawn = "The assignment was drawn from the scheme before data were taken, and the statistic was chosen before.";
    internal static readonly StatisticSetting LeastLength = new("least", "least number of occasions of a phase", 3, 1, 10_000, true);
    internal static readonly StatisticSetting Resamples =
        new("resamples", "random assignments when there are too many to go through", 9999, 1, 10_000_000, true);

    private static readonly StatisticSetting Median = new("median", "1 to compare medians, 0 to compare means", 0, 0, 1, true);

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        Entry(TwoSampleMeanPermutation.MonteCarloMethod, "Permutation test of the mean difference", "Δx̄",
            "mean(after) − mean(before); p over all relabellings up to 36 values, else over random ones with the observed one counted.",
            InputColumns.Value | InputColumns.Condition, [Exchangeable], ["fisher-1935", "phipson-smyth-2010"], double.NegativeInfinity, 0, [Resamples],
            input => EntryParts.TwoConditionRows(input, (before, after) =>
                FromTest("mean-difference", TwoSampleMeanPermutation.Of(after, before, new Xoshiro256(input.Seed), Count(input))))),
        Entry(SignFlip.MonteCarloMethod, "Sign-flip test of the mean paired difference", "d̄",
            "Mean of after − before; p over all sign patterns up to 36 pairs, else over random ones with the observed one counted.",
            InputColumns.Value | InputColumns.Condition | InputColumns.Subject, [Symmetric], ["fisher-1935", "phipson-smyth-2010"], double.NegativeInfinity, 0, [Resamples],
            input => EntryParts.PairRows(input, (before, after) => FromTest(
                "mean-difference", SignFlip.Of([.. after.Zip(before, (a, b) => a - b)], new Xoshiro256(input.Seed), Count(input))))),
        Entry(WilcoxonSignedRank.Method, "Wilcoxon signed-rank test, zeros dropped", "V", "Sum of the ranks of the rises; exact p with ties up to 500 pairs.",
            InputColumns.Value | InputColumns.Condition | InputColumns.Subject, [Symmetric], ["wilcoxon-1945"], 0, null, [],
            input => EntryParts.PairRows(input, (before, after) => FromRanks(WilcoxonSignedRank.Of(before, after)))),
        Entry(WilcoxonSignedRank.PrattMethod, "Wilcoxon signed-rank test, zeros ranked and then dropped", "V", "Sum of the ranks of the rises; exact p with ties up to 500 pairs.",
            InputColumns.Value | InputColumns.Condition | InputColumns.Subject, [Symmetric], ["pratt-1959"], 0, null, [],
            input => EntryParts.PairRows(input, (before, after) => FromRanks(WilcoxonSignedRank.Of(before, after, ZeroDifferences.RankedThenDropped)))),
        Entry(MannWhitney.Method, "Mann–Whitney test", "U", "Pairs of values in which the later one is larger, ties half; exact p with ties up to 120 values.",
            InputColumns.Value | InputColumns.Condition, [Exchangeable], ["mann-whitney-1947"], 0, null, [],
            input => EntryParts.TwoConditionRows(input, (before, after) => FromRanks(MannWhitney.Of(after, before)))),
        Scheme("randomization-phase-start", "Randomization test of a drawn phase start", "edgington-1975", LeastLength,
            (order, input) => order.Shortest >= Least(input) ? PhaseStartScheme.WithAtLeast(order.Length, Least(input)) : null),
        Scheme("randomization-phase-change", "Randomization test of drawn phase changes (withdrawal)", "onghena-1992", LeastLength,
            (order, input) => order.Shortest >= Least(input) ? new PhaseChangeScheme(order.Length, order.Runs, Least(input)) : null),
        Scheme("randomization-alternating", "Randomization test of alternating conditions", "onghena-edgington-1994",
            new("longest-run", "most occasions of one condition in a row", 2, 1, 10_000, true),
            (order, input) => order.Longest <= LongestRun(input) ? new AlternatingScheme(order.First, order.Length - order.First, LongestRun(input)) : null),
        Scheme("randomization-blocked", "Randomization test of conditions in drawn order within blocks of two", "edgington-onghena-2007", null,
            (order, _) => order.Length % 2 == 0 && order.Length <= 120 ? new BlockedScheme(order.Length / 2) : null),
    ];

    internal static int Count(TidyInput input) => (int)Math.Clamp(input.Setting("resamples", 9999), 1, 10_000_000);

    /// <summary>The rows of a test by relabelling.</summary>
    internal static IReadOnlyList<NamedEstimate> FromTest(string quantity, RandomizationResult test) => test.Observed is not { } observed
        ? ResultRow.None(test.Undefined!)
        :
        [
            ResultRow.WithP(quantity, observed, test.PTwoSided, test.IsExact ? "all assignments compared" : "a random sample of assignments compared"),
            ResultRow.Of("smallest-possible-p", test.SmallestPossibleP, note: test.SmallestPossibleP > 0.05 ? "no data of this design can give p of 0.05 or less" : null),
            ResultRow.Of("p-greater", test.PGreater),
            ResultRow.Of("p-less", test.PLess),
            ResultRow.Of("assignments", test.Assignments, "more than a number can hold"),
            ResultRow.Of("compared", test.Compared),
            ResultRow.Of("monte-carlo-error-of-p", test.MonteCarloError, "none: the test is exact"),
        ];

    private static IReadOnlyList<NamedEstimate> FromRanks(RankTest test) => test.Statistic is not { } statistic
        ? ResultRow.None(test.Undefined!)
        :
        [
            ResultRow.WithP("statistic", statistic, test.PTwoSided ?? test.PNormal, test.PTwoSided is null ? "p by the normal approximation" : "exact p"),
            ResultRow.Of("p-normal-approximation", test.PNormal),
        ];

    private static int Least(TidyInput input) => (int)Math.Clamp(input.Setting("least", 3), 1, 10_000);

    private static int LongestRun(TidyInput input) => (int)Math.Clamp(input.Setting("longest-run", 2), 1, 10_000);

    private static StatisticDefinition Scheme(
        string name, string title, string citation, StatisticSetting? setting, Func<ConditionOrder, TidyInput, AssignmentScheme?> schemeOf) =>
        Entry(name, title, "Δx̄", "mean(second condition) − mean(first) among its values under every admissible assignment; rows in order of time.",
            InputColumns.Value | InputColumns.Condition, [Drawn], citation == "edgington-onghena-2007" ? [citation] : [citation, "edgington-onghena-2007"], double.NegativeInfinity, 0,
            setting is null ? [Median, Resamples] : [setting, Median, Resamples], input => OfScheme(input, schemeOf));

    private static IReadOnlyList<NamedEstimate> OfScheme(TidyInput input, Func<ConditionOrder, TidyInput, AssignmentScheme?> schemeOf)
    {
        var conditions = TidyInput.Index(input.Conditions!);
        if (conditions.Length > 500)
            return ResultRow.None($"takes up to 500 occasions, got {conditions.Length}: give session means, one a row");
        if (conditions.Length == 0 || conditions.Max() != 1)
            return ResultRow.None("needs exactly two conditions");
        bool[] assignment = [.. conditions.Select(condition => condition == 1)];
        if (schemeOf(ConditionOrder.Of(assignment), input) is not { } scheme || !scheme.Admits(assignment))
            return ResultRow.None("the order of conditions is not one that the scheme with these settings admits");
        var statistic = input.Setting("median", 0) == 0 ? ConditionStatistic.MeanDifference : ConditionStatistic.MedianDifference;
        return FromTest(
            statistic == ConditionStatistic.MeanDifference ? "mean-difference" : "median-difference",
            RandomizationTest.Of([.. input.Values], assignment, scheme, statistic, new Xoshiro256(input.Seed), Count(input)));
    }

    private static StatisticDefinition Entry(
        string name, string title, string symbol, string what, InputColumns needs, string[] assumptions, string[] citations, double lower, double? none,
        StatisticSetting[] settings, Func<TidyInput, IReadOnlyList<NamedEstimate>> compute) => new()
        {
            Name = name,
            Title = title,
            Symbol = symbol,
            Family = StatisticFamily.Randomization,
            What = what,
            Needs = needs,
            Direction = EffectDirection.PositiveWhenValuesRise,
            LowerBound = lower,
            NullValue = none,
            Assumptions = assumptions,
            CitationKeys = citations,
            Settings = settings,
            Computation = compute,
        };
}
