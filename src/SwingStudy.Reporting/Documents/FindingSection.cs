using SwingStudy.Domain.Findings;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Planned findings about primary outcomes, player by player, with their reasons.</summary>
internal static class FindingSection
{
    /// <summary>Writes what stands in the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        var groups = report.Tables.Findings.Where(finding => finding is { Participant: not null, IsPlanned: true } && Comparisons.Is(report, finding.Outcome, OutcomeRole.Primary))
            .OrderBy(finding => Comparisons.OrderOf(report, finding.Outcome, finding.Contrast)).ThenBy(finding => finding.Participant, StringComparer.Ordinal)
            .GroupBy(finding => (finding.Outcome, finding.Contrast)).ToList();
        if (groups.Count == 0)
            html.Element("p", "No planned finding about a primary outcome of a player.");
        foreach (var group in groups)
        {
            var comparison = Comparisons.Of(report, group.Key.Outcome, group.Key.Contrast);
            html.Folded($"{comparison}: {VerdictCounts.Of(report, group)}", inside => Table(inside, report, comparison, group), "h3");
        }
    }

    private static void Table(Html html, StudyReport report, string caption, IEnumerable<FindingRow> findings)
    {
        html.OpenTableOf("findings", caption, "Player", "Verdict", "Statement and reasons");
        foreach (var finding in findings)
        {
            var isMeasured = Comparisons.IsMeasured(report, finding.Participant, finding.Outcome);
            html.Markup("<tr>").Element("th", finding.Participant!, "scope=\"row\"").Markup($"<td>{(isMeasured ? VerdictMark.Markup(finding.Verdict) : "not measured")}</td><td>")
                .Element("p", finding.Statement);
            if (isMeasured)
                html.List(finding.Reasons.Where(IsShown).Select(reason => Sentence.Of(reason.Text)));
            html.Markup("</td></tr>");
        }

        html.CloseTable();
    }

    /// <summary>Reasons for and against; what holds for the whole design stands under limits, and next steps on the players' own pages.</summary>
    private static bool IsShown(Reason reason) =>
        reason.Kind is ReasonKind.Evidence or ReasonKind.Mechanism or ReasonKind.Rival && reason.Code is not ("not-randomized" or "not-blinded" or ReasonCode.NotLocked);
}
