using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tables;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Tests.Support;

/// <summary>The invented study with curves: one player with events and enough sessions, one with neither, one without curves.</summary>
internal static class SomeCurves
{
    public const string Channel = "total_force_y";

    public static StudyReport Report()
    {
        var report = Some.Report();
        return report with
        {
            Protocol = report.Protocol with { Curves = [new CurvePlan(Channel, ["with-cue"])] },
            Tables = report.Tables with { CurveMeans = [.. CurveRows.MeansOf(Means())], CurveTests = [.. CurveRows.TestsOf(Tests())] },
        };
    }

    private static RowSet Means()
    {
        var rows = new RowSetBuilder(StudyTables.CurveMeans);
        foreach (var (phase, push) in new[] { ("baseline", 0.0), ("cue", 0.25) })
        {
            double[] onPhases = [.. Enumerable.Range(0, 201).Select(i => 1 + (0.5 * Math.Sin(i / 40.0)) + (push * Math.Exp(-Math.Pow((i - 160) / 15.0, 2))))];
            Add(rows, "P01", phase, "swing-phases", 0, 1, "sessions", 40, 5, phase == "cue" ? 2 : 0, onPhases, 0.06);
            double[] inTime = [.. Enumerable.Range(0, 141).Select(i => 0.9 + (0.4 * Math.Cos(i / 30.0)) + (push * Math.Exp(-Math.Pow((i - 100) / 10.0, 2))))];
            Add(rows, "P02", phase, "ms-from-impact", -500, 5, "swings", 12, 2, 0, inTime, 0.1);
        }

        rows.Add(("participant", "P03"), ("channel", Channel), ("phase", "baseline"), ("swings", 0), ("sessions", 0), ("lost", 0), ("undefined", "no curve of a swing that counts"));
        return rows.Build();
    }

    private static void Add(
        RowSetBuilder rows, string player, string phase, string axis, double first, double step, string over, int swings, int sessions, int lost, double[] mean, double half) => rows.Add(
        ("participant", player), ("channel", Channel), ("phase", phase), ("axis", axis), ("first", first), ("step", step), ("unit", "{BW}"), ("over", over), ("swings", swings),
        ("sessions", sessions), ("lost", lost), ("level", 0.95), ("mean", mean),
        ("pointwise_low", mean.Select(value => value - half).ToArray()), ("pointwise_high", mean.Select(value => value + half).ToArray()),
        ("simultaneous_low", over == "sessions" ? mean.Select(value => value - (1.5 * half)).ToArray() : null),
        ("simultaneous_high", over == "sessions" ? mean.Select(value => value + (1.5 * half)).ToArray() : null));

    private static RowSet Tests()
    {
        var rows = new RowSetBuilder(StudyTables.CurveTests);
        Add(rows, "P01", "largest-t", "sessions", 5.4, 0.0079, 40, 5);
        Add(rows, "P01", "span-t", "sessions", 5.4, 0.0079, 40, 5, ("from_pct", 148.0), ("to_pct", 174.0));
        Add(rows, "P01", "span-mass", "sessions", 120.0, 0.0079, 40, 5, ("from_pct", 140.0), ("to_pct", 180.0));
        Add(rows, "P02", "largest-t", "swings", -4.1, 0.0004, 12, 2);
        Add(rows, "P02", "span-t", "swings", -4.1, 0.0004, 12, 2, ("from_ms", -45.0), ("to_ms", 30.0));
        rows.Add(("participant", "P03"), ("channel", Channel), ("contrast", "with-cue"), ("measure", "largest-t"), ("n_from", 0), ("n_to", 0), ("sessions_from", 0), ("sessions_to", 0),
            ("undefined", "no curve of a swing that counts in baseline"));
        return rows.Build();
    }

    private static void Add(
        RowSetBuilder rows, string player, string measure, string permuted, double statistic, double p, int swings, int sessions, params (string, object?)[] span) => rows.Add(
        [("participant", player), ("channel", Channel), ("contrast", "with-cue"), ("measure", measure), ("permuted", permuted), ("statistic", Math.Abs(statistic)), ("direction", statistic > 0 ? "higher" : "lower"), ("p", p), ("method", measure == "span-mass" ? "curve-t-two-sample-cluster-mass" : "curve-t-two-sample-max-permutation"),
            ("n_from", swings), ("n_to", swings), ("sessions_from", sessions), ("sessions_to", sessions), .. span]);
}
