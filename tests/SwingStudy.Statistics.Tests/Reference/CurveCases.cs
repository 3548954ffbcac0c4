using SwingStudy.Statistics.Curves;

namespace SwingStudy.Statistics.Tests.Reference;

internal static class CurveCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("two sets of curves", c => c.Has("group1") && c.Expects("t_curve"),
            c => Named(CurveTest.TwoSample(c.Matrix("group1"), c.Matrix("group2"), c.Number("alpha")), c)),
        new("pairs of curves", c => c.Has("pre") && c.Expects("t_curve"),
            c => Named(CurveTest.Paired(c.Matrix("pre"), c.Matrix("post"), c.Number("alpha")), c)),
    ];

    private static Dictionary<string, object?> Named(CurveTestResult test, ReferenceCase c) => new()
    {
        ["t_curve"] = test.T,
        ["n_permutations"] = test.Compared,

        // Cases with many relabellings leave the sorted list out (null) and give quantiles alone.
        ["max_abs_t_sorted"] = c.Expected.GetProperty("max_abs_t_sorted").ValueKind == System.Text.Json.JsonValueKind.Null ? null : test.LargestTs,
        ["max_abs_t_quantiles"] = new Dictionary<string, object?>
        {
            ["p50"] = test.Quantile(0.5),
            ["p90"] = test.Quantile(0.9),
            ["p95"] = test.Quantile(0.95),
        },
        ["threshold"] = test.Threshold,
        ["max_abs_t_observed"] = test.LargestT,
        ["p_max"] = test.P,
        ["p_adjusted"] = test.AdjustedP,
        ["suprathreshold_clusters_0based_inclusive"] = test.Clusters.Select(cluster => new[] { cluster.From, cluster.To }).ToArray(),
    };
}
