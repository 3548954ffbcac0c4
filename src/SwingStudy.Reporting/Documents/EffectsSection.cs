using System.Globalization;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>All estimates of players, a table a comparison.</summary>
internal static class EffectsSection
{
    /// <summary>Writes what stands in the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        var confidence = string.Create(CultureInfo.InvariantCulture, $"{100 * report.Protocol.Analysis.Confidence:0.#} % interval");
        foreach (var planned in new[] { true, false })
        {
            foreach (var group in report.Tables.Effects.Where(row => row.Planned == planned).GroupBy(row => (row.Outcome, row.Contrast)))
            {
                var comparison = Comparisons.Of(report, group.Key.Outcome, group.Key.Contrast) + (planned ? "" : " (exploratory: not named in the protocol)");
                html.Folded(comparison, inside => Table(inside, report, comparison, confidence, group));
            }
        }
    }

    private static void Table(Html html, StudyReport report, string caption, string confidence, IEnumerable<EffectRow> all)
    {
        var rows = all.ToList();
        var measured = rows.Where(row => Comparisons.IsMeasured(report, row.Participant, row.Outcome)).ToList();
        var others = rows.Except(measured).Select(row => row.Participant).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        html.OpenTable(caption, "Player", "Measure", "#Estimate", "#" + confidence, "#p", "#Sessions", "#Swings", "Method");
        foreach (var row in measured.OrderBy(row => row.Participant, StringComparer.Ordinal))
        {
            var numbers = EffectNumbers.Of(report, row);
            html.Markup("<tr>").Element("th", row.Participant, "scope=\"row\"").Element("td", MethodWords.TitleOf(row.Measure));
            _ = row.Undefined is { } reason ? html.Element("td", reason, "colspan=\"3\"") : html.Number(numbers.Estimate).Number(numbers.Interval).Number(numbers.P);
            html.Number(Pair(row.SessionsFrom, row.SessionsTo)).Number(Pair(row.SwingsFrom, row.SwingsTo)).Element("td", row.Method).Markup("</tr>");
        }

        html.CloseTable();
        if (others.Count > 0)
            html.Element("p", $"Not measured: {string.Join(", ", others)}.");
    }

    private static string Pair(long? from, long? to) => string.Create(CultureInfo.InvariantCulture, $"{from?.ToString(CultureInfo.InvariantCulture) ?? "–"} → {to?.ToString(CultureInfo.InvariantCulture) ?? "–"}");
}
