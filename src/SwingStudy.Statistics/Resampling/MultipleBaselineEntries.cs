using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Resampling;

/// <summary>The catalogue entries of multiple-baseline randomization tests.</summary>
internal static class MultipleBaselineEntries
{
    private const int MostCases = 12;

    private static readonly StatisticSetting FirstStart =
        new("first-start", "1-based occasion of the earliest start in the first window; without it, a window holds every start that 'least' admits", Least: 2, Most: 10_000, IsWhole: true);

    private static readonly StatisticSetting Width = new("window", "number of admissible starts of a window, with first-start", 1, 1, 10_000, true);
    private static readonly StatisticSetting Stagger = new("stagger", "occasions from the beginning of one window to that of the next, with first-start", 1, 0, 10_000, true);

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        Entry("randomization-multiple-baseline-starts", "Multiple-baseline randomization test, starts drawn in each case's window",
            "Windows belong to the cases in order of first appearance.", "marascuilo-busk-1988", [FirstStart, Width, Stagger, ResamplingEntries.LeastLength, ResamplingEntries.Resamples],
            input => Test(input, Windows, orderDrawn: false)),
        Entry("randomization-multiple-baseline-order", "Multiple-baseline randomization test, cases drawn to the starts",
            "The starts carried out were fixed; which case had which was drawn.", "wampold-worsham-1986", [ResamplingEntries.Resamples],
            input => Test(input, (_, cases) => [.. cases.Select(one => new[] { one.Start })], orderDrawn: true)),
        Entry("randomization-multiple-baseline-both", "Multiple-baseline randomization test, cases drawn to windows and starts drawn in them",
            "Which case had which window was drawn, and the start in it.", "koehler-levin-1998", [FirstStart, Width, Stagger, ResamplingEntries.LeastLength, ResamplingEntries.Resamples],
            input => Test(input, Windows, orderDrawn: true)),
    ];

    private sealed record Case(double[] Series, int Start);

    private static IReadOnlyList<NamedEstimate> Test(TidyInput input, Func<TidyInput, List<Case>, int[][]> windowsOf, bool orderDrawn)
    {
        if (Cases(input, out var cases) is { } lack)
            return ResultRow.None(lack);
        if (orderDrawn && cases.Exists(one => one.Series.Length != cases[0].Series.Length))
            return ResultRow.None("needs series of one length when the order of cases was drawn");
        var windows = windowsOf(input, cases);
        for (var i = 0; i < windows.Length; i++)
        {
            if (windows[i].Length == 0 || windows[i].Any(start => start >= cases[i].Series.Length))
                return ResultRow.None($"window {i + 1} has no start, or one beyond the end of its series");
        }

        if (!Admits(windows, [.. cases.Select(one => one.Start)], orderDrawn))
            return ResultRow.None("the starts carried out cannot have been drawn from these windows");
        return ResamplingEntries.FromTest("mean-over-cases-of-mean-difference", MultipleBaselineTest.Of(
            [.. cases.Select(one => one.Series)], windows, [.. cases.Select(one => one.Start)], orderDrawn, new Xoshiro256(input.Seed), ResamplingEntries.Count(input)));
    }

    private static string? Cases(TidyInput input, out List<Case> cases)
    {
        cases = [];
        var conditions = TidyInput.Index(input.Conditions!);
        if (conditions.Length == 0 || conditions.Max() != 1)
            return "needs exactly two conditions, the one without intervention first";
        foreach (var rows in Enumerable.Range(0, conditions.Length).GroupBy(row => input.Subjects![row], StringComparer.Ordinal))
        {
            int[] order = [.. rows.OrderBy(row => input.Predictors?[row] ?? 0)];
            var start = Array.FindIndex(order, row => conditions[row] == 1);
            if (start < 1 || order.Skip(start).Any(row => conditions[row] == 0))
                return $"needs occasions without intervention, then with it, in every case; '{rows.Key}' has not";
            cases.Add(new Case([.. order.Select(row => input.Values[row])], start));
        }

        return cases.Count is > 0 and <= MostCases ? null : $"needs 1 to {MostCases} cases, got {cases.Count}";
    }

    private static int[][] Windows(TidyInput input, List<Case> cases)
    {
        var least = (int)input.Setting("least", 3);
        if (!input.Settings.TryGetValue("first-start", out var first))
            return [.. cases.Select(one => Enumerable.Range(least, Math.Max(0, one.Series.Length - (2 * least) + 1)).ToArray())];
        return [.. cases.Select((_, tier) => Enumerable.Range((int)(first - 1 + (tier * input.Setting("stagger", 1))), (int)input.Setting("window", 1)).ToArray())];
    }

    // Whether cases can be put to windows, one each, so that every window holds its case's start.
    private static bool Admits(int[][] windows, int[] starts, bool orderDrawn)
    {
        if (!orderDrawn)
            return windows.Zip(starts).All(pair => pair.First.Contains(pair.Second));
        var used = new bool[windows.Length];
        return Place(0);

        bool Place(int at)
        {
            if (at == starts.Length)
                return true;
            for (var tier = 0; tier < used.Length; tier++)
            {
                if (used[tier] || !windows[tier].Contains(starts[at]))
                    continue;
                used[tier] = true;
                if (Place(at + 1))
                    return true;
                used[tier] = false;
            }

            return false;
        }
    }

    private static StatisticDefinition Entry(
        string name, string title, string what, string citation, StatisticSetting[] settings, Func<TidyInput, IReadOnlyList<NamedEstimate>> compute) => new()
        {
            Name = name,
            Title = title,
            Symbol = "Δx̄",
            Family = StatisticFamily.Randomization,
            What = $"Mean over cases of mean(intervention) − mean(baseline) among its values under every admissible draw. {what} Rows in order of time, or by the predictor when it is named.",
            Needs = InputColumns.Value | InputColumns.Condition | InputColumns.Subject,
            Direction = EffectDirection.PositiveWhenValuesRise,
            NullValue = 0,
            Assumptions = ["The draw was made as stated, before data were taken.", "Each case begins without intervention and keeps it once begun."],
            CitationKeys = [citation, "edgington-onghena-2007"],
            Settings = settings,
            Computation = compute,
        };
}
