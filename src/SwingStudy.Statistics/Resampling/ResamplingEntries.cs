using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Resampling;

/// <summary>The catalogue entries of permutation, rank and randomization tests.</summary>
internal static class ResamplingEntries
{
    private const string Exchangeable = "Values could as well have come with the other condition: independent, of the same shape.";
    private const string Symmetric = "Without effect, changes scatter symmetrically about zero and independently of each other.";
    private const string Drawn = "The assignment was drawn from the scheme before data were taken, and the statistic was chosen before.";
    private const string LeastLength = "least: least number of occasions of a phase (default 3)";
    private const string Resamples = "resamples: random assignments when there are too many to go through (default 9999)";

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        Entry(TwoSampleMeanPermutation.MonteCarloMethod, "Permutation test of the mean difference", "Δx̄",
            "mean(after) − mean(before); p over all relabellings up to 36 values, else over random ones with the observed one counted.",
            InputColumns.Value | InputColumns.Condition, [Exchangeable], ["fisher-1935", "phipson-smyth-2010"], double.NegativeInfinity, 0, [Resamples],
            input => EntryParts.TwoConditions(TwoSampleMeanPermutation.MonteCarloMethod, input, (before, after) =>
                FromTest(TwoSampleMeanPermutation.MonteCarloMethod, TwoSampleMeanPermutation.Of(after, before, new Xoshiro256(input.Seed), Count(input))))),
        Entry(SignFlip.MonteCarloMethod, "Sign-flip test of the mean paired difference", "d̄",
            "Mean of after − before; p over all sign patterns up to 36 pairs, else over random ones with the observed one counted.",
            InputColumns.Value | InputColumns.Condition | InputColumns.Subject, [Symmetric], ["fisher-1935", "phipson-smyth-2010"], double.NegativeInfinity, 0, [Resamples],
            input => EntryParts.Pairs(SignFlip.MonteCarloMethod, input, (before, after) => FromTest(
                SignFlip.MonteCarloMethod, SignFlip.Of([.. after.Zip(before, (a, b) => a - b)], new Xoshiro256(input.Seed), Count(input))))),
        Entry(WilcoxonSignedRank.Method, "Wilcoxon signed-rank test, zeros dropped", "V", "Sum of the ranks of the rises; exact p with ties up to 500 pairs.",
            InputColumns.Value | InputColumns.Condition | InputColumns.Subject, [Symmetric], ["wilcoxon-1945"], 0, null, [],
            input => EntryParts.Pairs(WilcoxonSignedRank.Method, input, (before, after) => FromRanks(WilcoxonSignedRank.Of(before, after)))),
        Entry(WilcoxonSignedRank.PrattMethod, "Wilcoxon signed-rank test, zeros ranked and then dropped", "V", "Sum of the ranks of the rises; exact p with ties up to 500 pairs.",
            InputColumns.Value | InputColumns.Condition | InputColumns.Subject, [Symmetric], ["pratt-1959"], 0, null, [],
            input => EntryParts.Pairs(
                WilcoxonSignedRank.PrattMethod, input, (before, after) => FromRanks(WilcoxonSignedRank.Of(before, after, ZeroDifferences.RankedThenDropped)))),
        Entry(MannWhitney.Method, "Mann–Whitney test", "U", "Pairs of values in which the later one is larger, ties half; exact p with ties up to 120 values.",
            InputColumns.Value | InputColumns.Condition, [Exchangeable], ["mann-whitney-1947"], 0, null, [],
            input => EntryParts.TwoConditions(MannWhitney.Method, input, (before, after) => FromRanks(MannWhitney.Of(after, before)))),
        Scheme("randomization-phase-start", "Randomization test of a drawn phase start", "edgington-1975", LeastLength,
            (order, input) => order.Shortest >= Least(input) ? PhaseStartScheme.WithAtLeast(order.Length, Least(input)) : null),
        Scheme("randomization-phase-change", "Randomization test of drawn phase changes (withdrawal)", "onghena-1992", LeastLength,
            (order, input) => order.Shortest >= Least(input) ? new PhaseChangeScheme(order.Length, order.Runs, Least(input)) : null),
        Scheme("randomization-alternating", "Randomization test of alternating conditions", "onghena-edgington-1994",
            "longest-run: most occasions of one condition in a row (default 2)",
            (order, input) => order.Longest <= LongestRun(input) ? new AlternatingScheme(order.First, order.Length - order.First, LongestRun(input)) : null),
    ];

    internal static int Count(TidyInput input) => (int)Math.Clamp(input.Setting("resamples", 9999), 1, 10_000_000);

    private static Estimate FromTest(string name, RandomizationResult test) => test.Observed is { } observed
        ? Estimate.Of(name, observed, p: test.PTwoSided)
        : Estimate.NotDefined(name, test.Undefined!);

    private static Estimate FromRanks(RankTest test) => test.Statistic is { } statistic
        ? Estimate.Of(test.Method, statistic, p: test.PTwoSided ?? test.PNormal)
        : Estimate.NotDefined(test.Method, test.Undefined!);

    private static int Least(TidyInput input) => (int)Math.Clamp(input.Setting("least", 3), 1, 10_000);

    private static int LongestRun(TidyInput input) => (int)Math.Clamp(input.Setting("longest-run", 2), 1, 10_000);

    private static StatisticDefinition Scheme(
        string name, string title, string citation, string setting, Func<ConditionOrder, TidyInput, AssignmentScheme?> schemeOf) =>
        Entry(name, title, "Δx̄", "mean(second condition) − mean(first) among its values under every admissible assignment; rows in order of time.",
            InputColumns.Value | InputColumns.Condition, [Drawn], [citation, "edgington-onghena-2007"], double.NegativeInfinity, 0, [setting, Resamples],
            input => OfScheme(name, input, schemeOf));

    private static Estimate OfScheme(string name, TidyInput input, Func<ConditionOrder, TidyInput, AssignmentScheme?> schemeOf)
    {
        var conditions = TidyInput.Index(input.Conditions!);
        if (conditions.Length > 500)
            return Estimate.NotDefined(name, $"takes up to 500 occasions, got {conditions.Length}: give session means, one a row");
        if (conditions.Length == 0 || conditions.Max() != 1)
            return Estimate.NotDefined(name, "needs exactly two conditions");
        bool[] assignment = [.. conditions.Select(condition => condition == 1)];
        if (schemeOf(ConditionOrder.Of(assignment), input) is not { } scheme || !scheme.Admits(assignment))
            return Estimate.NotDefined(name, "the order of conditions is not one that the scheme with these settings admits");
        return FromTest(name, RandomizationTest.Of(
            [.. input.Values], assignment, scheme, ConditionStatistic.MeanDifference, new Xoshiro256(input.Seed), Count(input)));
    }

    private static StatisticDefinition Entry(
        string name, string title, string symbol, string what, InputColumns needs, string[] assumptions, string[] citations, double lower, double? none,
        string[] settings, Func<TidyInput, Estimate> compute) => new()
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
