using System.Globalization;
using NodaTime.Text;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>What the page was made from.</summary>
internal static class ProvenanceSection
{
    private static readonly InstantPattern Moment = InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm 'UTC'");

    /// <summary>Writes what stands in the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        html.Element("p", "Every number above stands in one of these table versions, and 'swingstudy audit trace' leads from there to file, row and raw text.")
            .OpenTable("What this report was made from", "Thing", "Version");
        Row(html, "Protocol", $"{report.Protocol.Name} {report.Protocol.Version}, {(report.LockedAt is { } at ? $"locked {Moment.Format(at)}" : "not locked")}");
        Row(html, "Protocol hash (SHA-256)", report.Protocol.Hash.ToString());
        Row(html, "Dictionary", $"{report.Dictionary.Name} {report.Dictionary.Version}");
        Row(html, "Dictionary hash (SHA-256)", report.Dictionary.Hash.ToString());
        foreach (var (table, version) in report.Versions)
            Row(html, $"Table {table}", string.Create(CultureInfo.InvariantCulture, $"version {version}"));
        Row(html, "SwingStudy", typeof(ReportWriter).Assembly.GetName().Version!.ToString(3));
        html.CloseTable();
    }

    private static void Row(Html html, string thing, string version) =>
        html.Markup("<tr>").Element("th", thing, "scope=\"row\"").Markup("<td>").Element("code", version).Markup("</td></tr>");
}
