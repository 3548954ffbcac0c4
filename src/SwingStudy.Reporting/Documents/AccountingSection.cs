using System.Globalization;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>What came in, what was counted, and what was not, with reasons.</summary>
internal static class AccountingSection
{
    /// <summary>Writes the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        html.Markup("<section id=\"accounting\">").Element("h2", "Accounting: nothing is lost without a reason");
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
        Counts(html, "How captures found their swing", "Method or reason", report.Tables.Links.Select(pair => (Key: pair.Key.Replace('-', ' '), pair.Value)));
        Counts(html, "Flags of screening", "Rule and action", report.Tables.Flags
            .GroupBy(flag => $"{flag.Rule.Replace('-', ' ')}{(flag.Variable is { } variable ? $", {TitleOf(report, variable)}" : "")}: {flag.Action.Replace('-', ' ')}")
            .Select(group => (group.Key, group.Count())));
        html.Markup("</section>");
    }

    private static void Counts(Html html, string caption, string what, IEnumerable<(string Key, int Count)> counts)
    {
        var rows = counts.OrderByDescending(row => row.Count).ThenBy(row => row.Key, StringComparer.Ordinal).ToList();
        if (rows.Count == 0)
            return;
        html.OpenTable(caption, what, "#Count");
        foreach (var (key, count) in rows)
            Row(html, key, count);
        html.CloseTable();
    }

    private static string TitleOf(StudyReport report, string variable) =>
        report.Dictionary.TryGet(variable, out var found) ? found.Title.ToLower(CultureInfo.InvariantCulture) : variable;

    private static void Row(Html html, string what, long count) =>
        html.Markup("<tr>").Element("th", what, "scope=\"row\"").Element("td", FlowFigure.Text(count), "class=\"number\"").Markup("</tr>");
}
