using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>What came in, what was counted, and what was not, with reasons.</summary>
internal static class AccountingSection
{
    /// <summary>Writes what stands in the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        ReportWriter.Show(html, ReportFigures.Flow(report));
        var intake = report.Intake;
        var balanced = intake.LinesRead == intake.RowsTaken + intake.RowsRejected + intake.LinesNotData;
        html.OpenTable("Files and lines", "What", "#Count");
        Row(html, "Files taken", intake.Taken);
        Row(html, "Files held for a person", intake.Held);
        Row(html, "Files refused by a person", intake.Rejected);
        Row(html, "Files that came again, unchanged", intake.Duplicates);
        Row(html, "Lines read", intake.LinesRead);
        Row(html, "Rows taken", intake.RowsTaken);
        Row(html, "Rows rejected, raw text kept", intake.RowsRejected);
        Row(html, "Lines that are not data", intake.LinesNotData);
        html.CloseTable().Element("p", balanced
            ? "The lines balance: read = taken + rejected + not data."
            : "THE LINES DO NOT BALANCE: read differs from taken + rejected + not data. Run 'swingstudy audit verify'.");
        Counts(html, "How records found their swing, or why they have none", "How, or why not", report.Tables.Links.Select(pair => (Key: LinkWords.Of(pair.Key), pair.Value)));
        Counts(html, "Flags of screening", "Rule and action", report.Tables.Flags
            .GroupBy(flag => $"{flag.Rule.Replace('-', ' ')}{(flag.Variable is { } variable ? $", {Comparisons.Lower(Comparisons.TitleOf(report, variable))}" : "")}: {flag.Action.Replace('-', ' ')}")
            .Select(group => (group.Key, group.Count())));
    }

    private static void Counts(Html html, string caption, string what, IEnumerable<(string Key, int Count)> counts)
    {
        var rows = counts.OrderByDescending(row => row.Count).ThenBy(row => row.Key, StringComparer.Ordinal).ToList();
        if (rows.Count == 0)
            return;
        html.Folded(caption, inside =>
        {
            inside.OpenTable(caption, what, "#Count");
            foreach (var (key, count) in rows)
                Row(inside, key, count);
            inside.CloseTable();
        });
    }

    private static void Row(Html html, string what, long count) =>
        html.Markup("<tr>").Element("th", what, "scope=\"row\"").Element("td", FlowFigure.Text(count), "class=\"number\"").Markup("</tr>");
}
