using System.Globalization;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Where the study went another way than planned: the lock and amendments, and what the data of primary outcomes show.</summary>
internal static class DeviationsSection
{
    private static readonly string[] Codes =
        ["few-sessions", "few-swings", "condition-changed", "condition-mixed", "condition-unknown", "sensor-changed", "sensor-mixed", "calibration-drift", "clock-unsure", "unequal-exclusions", "shared-day"];

    /// <summary>Deviations that the data of primary outcomes show, player by player.</summary>
    public static IReadOnlyList<(string Participant, string Text)> RowsOf(StudyReport report) =>
    [
        .. report.Tables.Findings.Where(finding => finding is { Participant: not null, IsPlanned: true } && Comparisons.Is(report, finding.Outcome, OutcomeRole.Primary)
                && Comparisons.IsMeasured(report, finding.Participant, finding.Outcome))
            .SelectMany(finding => finding.Reasons.Where(reason => Codes.Contains(reason.Code)).Select(reason => (Participant: finding.Participant!, reason.Code, reason.Text))).Distinct()
            .OrderBy(row => row.Participant, StringComparer.Ordinal).ThenBy(row => Array.IndexOf(Codes, row.Code)).ThenBy(row => row.Text, StringComparer.Ordinal)
            .Select(row => (row.Participant, row.Text)),
    ];

    /// <summary>Writes what stands in the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        html.Element("h3", "The protocol").List(Versions(report)).Element("h3", "In the data of primary outcomes");
        var rows = RowsOf(report);
        if (rows.Count == 0)
        {
            html.Element("p", "None found.");
            return;
        }

        html.OpenTable("What was found", "Player", "Deviation");
        foreach (var player in rows.GroupBy(row => row.Participant))
            html.Markup("<tr>").Element("th", player.Key, "scope=\"row\"").Markup("<td>").List(player.Select(row => Sentence.Of(row.Text))).Markup("</td></tr>");
        html.CloseTable();
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
