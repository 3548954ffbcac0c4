using SwingStudy.Domain.Tables;

namespace SwingStudy.Reporting.Rows;

/// <summary>Takes rows of the curve tables.</summary>
internal static class CurveRows
{
    public static IEnumerable<CurveMeanRow> MeansOf(RowSet set)
    {
        for (var row = 0; row < set.Count; row++)
        {
            var isSimultaneous = List(set, "simultaneous_low", row).Length > 0;
            var band = isSimultaneous ? "simultaneous" : "pointwise";
            yield return new CurveMeanRow(
                set.Texts("participant")[row] ?? "",
                set.Texts("channel")[row] ?? "",
                set.Texts("phase")[row] ?? "",
                set.Texts("axis")[row],
                set.Numbers("first")[row],
                set.Numbers("step")[row],
                set.Texts("unit")[row],
                set.Texts("over")[row],
                set.Integers("swings")[row] ?? 0,
                set.Integers("sessions")[row] ?? 0,
                set.Integers("lost")[row] ?? 0,
                set.Numbers("level")[row],
                List(set, "mean", row),
                List(set, band + "_low", row),
                List(set, band + "_high", row),
                isSimultaneous,
                set.Texts("method")[row] ?? "",
                set.Texts("undefined")[row]);
        }
    }

    public static IEnumerable<CurveTestRow> TestsOf(RowSet set)
    {
        for (var row = 0; row < set.Count; row++)
        {
            var isPhases = double.IsFinite(set.Numbers("from_pct")[row]);
            yield return new CurveTestRow(
                set.Texts("participant")[row] ?? "",
                set.Texts("channel")[row] ?? "",
                set.Texts("contrast")[row] ?? "",
                set.Texts("measure")[row] ?? "",
                set.Numbers(isPhases ? "from_pct" : "from_ms")[row],
                set.Numbers(isPhases ? "to_pct" : "to_ms")[row],
                set.Numbers("statistic")[row],
                set.Texts("direction")[row],
                set.Numbers("p")[row],
                set.Texts("permuted")[row],
                set.Integers("n_from")[row],
                set.Integers("n_to")[row],
                set.Integers("sessions_from")[row],
                set.Integers("sessions_to")[row],
                set.Texts("method")[row] ?? "",
                set.Texts("undefined")[row]);
        }
    }

    private static double[] List(RowSet set, string column, int row) => ((NumberListColumn)set[column]).Values[row] ?? [];
}
