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
        Scheme("randomization-phase-start", "Randomization test of a drawn phase start", ["edgington-1975"], 2,
            "least: least number of occasions of a phase (default 3)", (length, _, _, least) => PhaseStartScheme.WithAtLeast(length, least)),
        Scheme("randomization-phase-change", "Randomization test of drawn phase changes (withdrawal)", ["onghena-1992"], 2,
            "least: least number of occasions of a phase (default 3)", (length, _, runs, least) => new PhaseChangeScheme(length, runs, least)),
        Scheme("randomization-alternating", "Randomization test of alternating conditions", ["onghena-edgington-1994"], 2,
            "longest-run: most occasions of one condition in a row (default 2)", (length, later, _, run) => new AlternatingScheme(length - later, later, run)),
    ];

    internal static int Count(TidyInput input) => (int)Math.Clamp(input.Setting("resamples", 9999), 1, 10_000_000);

    private static Estimate FromTest(string name, RandomizationResult test) => test.Observed is { } observed
        ? Estimate.Of(name, observed, p: test.PTwoSided)
        : Estimate.NotDefined(name, test.Undefined!);

    private static Estimate FromRanks(RankTest test) => test.Statistic is { } statistic
        ? Estimate.Of(test.Method, statistic, p: test.PTwoSided ?? test.PNormal)
        : Estimate.NotDefined(test.Method, test.Undefined!);

    private delegate AssignmentScheme SchemeOf(int length, int later, int runs, int setting);

    private static StatisticDefinition Scheme(string name, string title, string[] citations, int leastOccasions, string setting, SchemeOf build) =>
        Entry(name, title, "Δx̄", "mean(second condition) − mean(first) among its values under every admissible assignment; rows in order of time.",
            InputColumns.Value | InputColumns.Condition, [Drawn], [.. citations, "edgington-onghena-2007"], double.NegativeInfinity, 0, [setting, Resamples],
            input => OfScheme(name, input, leastOccasions, (int)Math.Clamp(setting.StartsWith("least", StringComparison.Ordinal) ? input.Setting("least", 3) : input.Setting("longest-run", 2), 1, 10_000), build));

    private static Estimate OfScheme(string name, TidyInput input, int leastOccasions, int setting, SchemeOf build)
    {
        var conditions = TidyInput.Index(input.Conditions!);
        var later = conditions.Count(condition => condition == 1);
        if (conditions.Length < leastOccasions || later == 0 || conditions.Any(condition => condition > 1))
            return Estimate.NotDefined(name, "needs exactly two conditions");
        if (conditions.Length > 500)
            return Estimate.NotDefined(name, $"takes up to 500 occasions, got {conditions.Length}: give session means, one a row");
        bool[] assignment = [.. conditions.Select(condition => condition == 1)];
        var runs = 1 + Enumerable.Range(1, assignment.Length - 1).Count(i => assignment[i] != assignment[i - 1]);
        if (Admitting(assignment, later, runs, setting, build) is not { } scheme)
            return Estimate.NotDefined(name, "the order of conditions is not one that the scheme with these settings admits");
        var test = RandomizationTest.Of([.. input.Values], assignment, scheme, ConditionStatistic.MeanDifference, new Xoshiro256(input.Seed), Count(input));
        return FromTest(name, test);
    }

    // Whether the settings admit any order is checked on the actual one, because a scheme of nothing cannot be built.
    private static AssignmentScheme? Admitting(bool[] assignment, int later, int runs, int setting, SchemeOf build)
    {
        int longest = 0, shortest = assignment.Length, run = 0;
        for (var i = 0; i < assignment.Length; i++)
        {
            run = i > 0 && assignment[i] == assignment[i - 1] ? run + 1 : 1;
            longest = Math.Max(longest, run);
            if (i == assignment.Length - 1 || assignment[i + 1] != assignment[i])
                shortest = Math.Min(shortest, run);
        }

        var alternating = build(2, 1, 2, 1) is AlternatingScheme;
        if (alternating ? longest > setting : shortest < setting)
            return null;
        var scheme = build(assignment.Length, later, runs, setting);
        return scheme.Admits(assignment) ? scheme : null;
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
