using System.Globalization;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Where the study went another way than planned: the lock and amendments, and what the data of primary outcomes show.</summary>
internal static class DeviationsSection
{
    private static readonly string[] Codes =
        ["few-sessions", "few-swings", "condition-changed", "condition-mixed", "condition-unknown", "sensor-changed", "sensor-mixed", "calibration-drift", "clock-unsure", "unequal-exclusions", "shared-day"];

    /// <summary>Writes the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        html.Markup("<section id=\"deviations\">").Element("h2", "Deviations from the plan").Element("h3", "The protocol").List(Versions(report)).Element("h3", "In the data of primary outcomes");
        var rows = report.Tables.Findings.Where(finding => finding is { Participant: not null, IsPlanned: true } && Comparisons.Is(report, finding.Outcome, OutcomeRole.Primary))
            .SelectMany(finding => finding.Reasons.Where(reason => Codes.Contains(reason.Code)).Select(reason => (finding.Participant, reason.Code, reason.Text))).Distinct()
            .OrderBy(row => row.Participant, StringComparer.Ordinal).ThenBy(row => Array.IndexOf(Codes, row.Code)).ThenBy(row => row.Text, StringComparer.Ordinal).ToList();
        if (rows.Count == 0)
        {
            html.Element("p", "None found.").Markup("</section>");
            return;
        }

        html.OpenTable("What was found", "Player", "Deviation");
        foreach (var (participant, _, text) in rows)
            html.Markup("<tr>").Element("th", participant!, "scope=\"row\"").Element("td", text).Markup("</tr>");
        html.CloseTable().Markup("</section>");
    }

    private static IEnumerable<string> Versions(StudyReport report)
    {
        if (!report.History.IsLocked)
        {
            yield return "The protocol is not locked: nobody can show that the analysis was planned before data. 'swingstudy protocol lock' does it.";
            yield break;
        }

        foreach (var version in report.History.Versions)
        {
            var day = version.At.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);
            var after = version.IsAfterData ? "after data that could show an effect" : "before data that could show an effect";
            yield return version.Number == 1
                ? $"Locked on {day}, {after}."
                : string.Create(CultureInfo.InvariantCulture, $"Amendment {version.Number - 1} on {day}, {after}. Reason: {version.Reason ?? "none given"}. Known by then: {version.Known ?? "nothing was said"}.");
        }
    }
}
