using System.Globalization;
using SwingStudy.Statistics.Catalogue;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Curves;

/// <summary>The catalogue entries of whole curves: the predictor is the node, a curve one subject (and session) in one condition.</summary>
internal static class CurveEntries
{
    private const InputColumns Columns = InputColumns.Value | InputColumns.Condition | InputColumns.Subject | InputColumns.Predictor;

    private static readonly StatisticSetting Alpha = new("alpha", "error rate over the whole curve; of the |t| that forms runs for cluster tests", 0.05, 1e-4, 0.5);
    private static readonly StatisticSetting Resamples = new("resamples", "relabellings or resamples when there are too many to go through", 10_000, 2, 1_000_000, true);

    public static IReadOnlyList<StatisticDefinition> All { get; } =
    [
        Test(CurveTest.TwoSampleMethod, "Two independent sets of curves, largest |t|", "nichols-holmes-2002", "Curves could as well have come with the other condition.", false, MaxT),
        Test(CurveTest.PairedMethod, "Pairs of curves, largest |t|", "nichols-holmes-2002", "Without effect, difference curves are symmetric about zero.", true, MaxT),
        Test(ClusterMassTest.TwoSampleMethod, "Two independent sets of curves, mass of runs", "maris-oostenveld-2007", "Curves could as well have come with the other condition.", false, Mass),
        Test(ClusterMassTest.PairedMethod, "Pairs of curves, mass of runs", "maris-oostenveld-2007", "Without effect, difference curves are symmetric about zero.", true, Mass),
        Entry(CurveBand.Method, "Mean curve with pointwise and simultaneous band", "x̄(t)", "Rows: mean at each node with the pointwise t interval, then with the interval that holds over all nodes together.",
            InputColumns.Value | InputColumns.Subject | InputColumns.Predictor, ["degras-2011", "lenhoff-1999"], "Curves are independent of each other.", [Resamples], null,
            input => Sets(input, conditions: 1, out var sets, out var nodes) is { } lack ? ResultRow.None(lack) : Band(sets[0], nodes, input)),
    ];

    private delegate IReadOnlyList<NamedEstimate> Compare(List<double[]> before, List<double[]> after, double[] nodes, bool paired, TidyInput input);

    private static StatisticDefinition Test(string name, string title, string citation, string assumption, bool paired, Compare compare) =>
        Entry(name, title, "t", "Positive where the second condition is higher. First row: the largest |t|, or the heaviest run, with p over the whole curve.", Columns, [citation], assumption,
            [Alpha, Resamples], null, input => Sets(input, conditions: 2, out var sets, out var nodes) is { } lack
                ? ResultRow.None(lack)
                : paired && !ArePairs(input) ? ResultRow.None("needs both curves of every subject (and session, when that column is named)") : compare(sets[0], sets[1], nodes, paired, input));

    private static IReadOnlyList<NamedEstimate> MaxT(List<double[]> before, List<double[]> after, double[] nodes, bool paired, TidyInput input)
    {
        var (alpha, chance, compared) = (input.Setting("alpha", 0.05), new Xoshiro256(input.Seed), (int)input.Setting("resamples", 10_000));
        var test = paired ? CurveTest.Paired(before, after, alpha, chance, compared) : CurveTest.TwoSample(after, before, alpha, chance, compared);
        if (test.Undefined is { } reason)
            return ResultRow.None(reason);
        const string infinite = "infinite: the sets differ without any scatter";
        return
        [
            test.LargestT is { } largest && double.IsFinite(largest) ? ResultRow.WithP("largest-t", largest, test.P) : ResultRow.Of("largest-t", null, infinite),
            ResultRow.Of("threshold", test.Threshold, infinite),
            ResultRow.Of("smallest-possible-p", 1.0 / test.Compared),
            .. test.Clusters.Select(run => new NamedEstimate(Run(nodes, run.From, run.To), double.IsFinite(run.PeakT)
                ? Estimate.Of("", run.PeakT, p: run.P) : Estimate.NotDefined("", infinite), "largest t of the run")),
            .. nodes.Select((node, i) => new NamedEstimate(Node(node), test.T[i] is { } t && double.IsFinite(t)
                ? Estimate.Of("", t, p: test.AdjustedP[i]) : Estimate.NotDefined("", test.T[i] is null ? "no curve varies here" : infinite))),
        ];
    }

    private static IReadOnlyList<NamedEstimate> Mass(List<double[]> before, List<double[]> after, double[] nodes, bool paired, TidyInput input)
    {
        var (alpha, chance, compared) = (input.Setting("alpha", 0.05), new Xoshiro256(input.Seed), (int)input.Setting("resamples", 10_000));
        var test = paired ? ClusterMassTest.Paired(before, after, alpha, chance, compared) : ClusterMassTest.TwoSample(after, before, alpha, chance, compared);
        if (test.Undefined is { } reason)
            return ResultRow.None(reason);
        var heaviest = test.Clusters.Count == 0 ? (MassCluster?)null : test.Clusters.MaxBy(run => Math.Abs(run.Mass));
        return
        [
            heaviest is null ? ResultRow.Of("heaviest-run", 0, note: "no run beyond the forming t") : Row("heaviest-run", heaviest.Value),
            ResultRow.Of("forming-t", test.FormingT),
            ResultRow.Of("smallest-possible-p", 1.0 / test.Compared),
            .. test.Clusters.Select(run => Row(Run(nodes, run.From, run.To), run)),
        ];

        static NamedEstimate Row(string quantity, MassCluster run) => double.IsFinite(run.Mass)
            ? ResultRow.WithP(quantity, run.Mass, run.P)
            : ResultRow.Of(quantity, null, "infinite: the sets differ without any scatter");
    }

    private static IReadOnlyList<NamedEstimate> Band(List<double[]> curves, double[] nodes, TidyInput input)
    {
        var band = CurveBand.Of(curves, new Xoshiro256(input.Seed), input.Confidence, (int)input.Setting("resamples", 10_000));
        if (band.Undefined is { } reason)
            return ResultRow.None(reason);
        return [.. Limits(band.PointwiseFactor, "pointwise"), .. Limits(band.SimultaneousFactor, "simultaneous")];

        IEnumerable<NamedEstimate> Limits(double? factor, string kind) => nodes.Select((node, i) =>
        {
            var half = factor * band.StandardDeviation[i] / Math.Sqrt(band.Count);
            return ResultRow.Of($"{kind} {Node(node)}", band.Mean[i], half is { } width ? new Interval(band.Mean[i] - width, band.Mean[i] + width, band.Level) : null,
                "needs at least 3 curves that vary");
        });
    }

    private static string? Sets(TidyInput input, int conditions, out List<double[]>[] sets, out double[] nodes)
    {
        var grid = input.Predictors!.Distinct().Order().ToArray();
        (sets, nodes) = ([], grid);
        var groups = conditions == 1 ? new int[input.Values.Count] : TidyInput.Index(input.Conditions!);
        if (groups.Length == 0 || groups.Max() != conditions - 1)
            return $"needs {(conditions == 1 ? "rows" : "exactly two conditions")}";
        var place = grid.Select((node, i) => (node, i)).ToDictionary(pair => pair.node, pair => pair.i);
        var found = new List<double[]>[conditions];
        for (var set = 0; set < conditions; set++)
        {
            found[set] = [];
            var curves = Enumerable.Range(0, groups.Length).Where(row => groups[row] == set)
                .GroupBy(row => (input.Subjects![row], input.Conditions?[row] + "\n" + input.Sessions?[row])).OrderBy(curve => curve.Key.Item1, StringComparer.Ordinal).ThenBy(curve => curve.Key.Item2, StringComparer.Ordinal);
            foreach (var rows in curves)
            {
                if (rows.Count() != grid.Length || rows.Select(row => input.Predictors![row]).Distinct().Count() != grid.Length)
                    return $"needs one value of every curve at each of the {grid.Length} nodes; '{rows.Key.Item1}' has not";
                var curve = new double[grid.Length];
                foreach (var row in rows)
                    curve[place[input.Predictors![row]]] = input.Values[row];
                found[set].Add(curve);
            }
        }

        sets = found;
        return null;
    }

    private static bool ArePairs(TidyInput input)
    {
        var curves = input.Conditions!.Select((condition, row) => (condition, Unit: (input.Subjects![row], input.Sessions?[row]))).Distinct()
            .GroupBy(curve => curve.condition, curve => curve.Unit).Select(units => units.ToHashSet()).ToList();
        return curves[0].SetEquals(curves[1]);
    }

    private static string Node(double node) => string.Create(CultureInfo.InvariantCulture, $"node {node}");

    private static string Run(double[] nodes, int from, int to) => string.Create(CultureInfo.InvariantCulture, $"run {nodes[from]} to {nodes[to]}");

    private static StatisticDefinition Entry(
        string name, string title, string symbol, string what, InputColumns needs, string[] citations, string assumption, StatisticSetting[] settings, double? none,
        Func<TidyInput, IReadOnlyList<NamedEstimate>> compute) => new()
        {
            Name = name,
            Title = title,
            Symbol = symbol,
            Family = StatisticFamily.Curve,
            What = $"{what} One row is one node of one curve: the predictor is the node, a curve one subject, with a session column one session.",
            Needs = needs,
            Direction = EffectDirection.PositiveWhenValuesRise,
            NullValue = none,
            Assumptions = [assumption, "All curves are over the same normalized time."],
            CitationKeys = citations,
            Settings = settings,
            Computation = compute,
        };
}
