using System.Globalization;
using SwingStudy.Domain.Findings;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Findings with their reasons, and the changes behind them.</summary>
internal static class FindingSections
{
    /// <summary>Writes the findings: planned ones first, then, apart, those that nobody planned before data.</summary>
    public static void Findings(Html html, StudyReport report)
    {
        html.Markup("<section id=\"findings\">").Element("h2", "Findings");
        var planned = report.Tables.Findings.Where(finding => finding.IsPlanned).ToList();
        if (report.Tables.Findings.Count == 0)
            html.Element("p", "No findings yet. 'swingstudy run' makes them once sessions of two phases are in.");
        Summary(html, report, [.. planned.Where(finding => finding.Participant is not null)]);
        Tables(html, report, planned, "The study as a whole");
        var others = report.Tables.Findings.Where(finding => !finding.IsPlanned).ToList();
        if (others.Count > 0)
        {
            html.Element("h3", "Not planned before data").Element("p", "Comparisons that the protocol does not name, or names only since data could be seen. They suggest questions for the next study and support nothing.");
            Tables(html, report, others, "The study as a whole, not planned before data");
        }

        html.Markup("</section>");
    }

    /// <summary>Writes the changes behind the findings, with their uncertainty.</summary>
    public static void Changes(Html html, StudyReport report)
    {
        html.Markup("<section id=\"changes\">").Element("h2", "Changes with their uncertainty");
        foreach (var figure in ReportFigures.Changes(report))
            ReportWriter.Show(html, figure);
        Effects(html, report);
        html.Markup("</section>");
    }

    private static void Tables(Html html, StudyReport report, List<FindingRow> findings, string caption)
    {
        var ordered = findings.OrderBy(finding => Comparisons.OrderOf(report, finding.Outcome, finding.Contrast)).ThenBy(finding => finding.Participant, StringComparer.Ordinal).ToList();
        List<FindingRow> study = [.. ordered.Where(finding => finding.Participant is null)];
        if (study.Count > 0)
            Table(html, report, caption, study, false);
        foreach (var group in ordered.Where(finding => finding.Participant is not null).GroupBy(finding => (finding.Outcome, finding.Contrast)))
            Table(html, report, Comparisons.Of(report, group.Key.Outcome, group.Key.Contrast), [.. group], true);
    }

    private static void Summary(Html html, StudyReport report, List<FindingRow> players)
    {
        var primary = report.Protocol.Outcomes.Where(outcome => outcome.Role == OutcomeRole.Primary).Select(outcome => outcome.Variable).ToHashSet();
        foreach (var group in players.Where(finding => finding.Outcome is { } outcome && primary.Contains(outcome)).GroupBy(finding => (finding.Outcome, finding.Contrast)))
        {
            var counts = Verdict.All.Select(verdict => (verdict, count: group.Count(finding => finding.Verdict == verdict))).Where(pair => pair.count > 0);
            html.Element("p", string.Create(
                CultureInfo.InvariantCulture,
                $"{Comparisons.Of(report, group.Key.Outcome, group.Key.Contrast)}: of {group.Count()} players {string.Join(", ", counts.Select(pair => $"{pair.count} {pair.verdict}"))}."));
        }
    }

    private static void Table(Html html, StudyReport report, string caption, IReadOnlyList<FindingRow> findings, bool players)
    {
        html.OpenTableOf("findings", caption, players ? "Player" : "About", "Verdict", "Statement and reasons");
        foreach (var finding in findings)
        {
            var about = players ? finding.Participant! : finding.Outcome is null ? "study" : Comparisons.Of(report, finding.Outcome, finding.Contrast);
            html.Markup("<tr>").Element("th", about, "scope=\"row\"")
                .Markup($"<td>{VerdictMark.Markup(finding.Verdict)}</td><td>").Element("p", finding.Statement).List(Shown(finding)).Markup("</td></tr>");
        }

        html.CloseTable();
    }

    /// <summary>Reasons for and against; what holds for the whole design stands under limits, and next steps on the players' own pages.</summary>
    private static IEnumerable<string> Shown(FindingRow finding) => finding.Participant is null
        ? [.. finding.Of(ReasonKind.Evidence).Select(reason => reason.Text), string.Join("; ", finding.Of(ReasonKind.Rival).Select(reason => $"{reason.Code} {reason.Text}"))]
        : finding.Reasons.Where(reason => reason.Kind is ReasonKind.Evidence or ReasonKind.Mechanism or ReasonKind.Rival && reason.Code is not ("not-randomized" or "not-blinded" or ReasonCode.NotLocked))
            .Select(reason => reason.Text);

    private static void Effects(Html html, StudyReport report)
    {
        foreach (var planned in new[] { true, false })
        {
            var rows = report.Tables.Effects.Where(row => row.Planned == planned).ToList();
            foreach (var group in rows.GroupBy(row => (row.Outcome, row.Contrast)))
            {
                var confidence = report.Protocol.Analysis.Confidence.ToString("P0", CultureInfo.InvariantCulture).Replace(" ", "", StringComparison.Ordinal);
                html.OpenTable(
                    $"{Comparisons.Of(report, group.Key.Outcome, group.Key.Contrast)}{(planned ? "" : " (exploratory: not named in the protocol)")}",
                    "Player", "Measure", "#Estimate", $"#{confidence} interval", "#p", "#Sessions", "#Swings", "Method");
                foreach (var row in group.OrderBy(row => row.Participant, StringComparer.Ordinal))
                    Effect(html, report, row);
                html.CloseTable();
            }
        }
    }

    private static void Effect(Html html, StudyReport report, EffectRow row)
    {
        var numbers = EffectNumbers.Of(report, row);
        html.Markup("<tr>").Element("th", row.Participant, "scope=\"row\"").Element("td", row.Measure)
            .Element("td", row.Undefined ?? numbers.Estimate, row.Undefined is null ? "class=\"number\"" : "")
            .Element("td", numbers.Interval, "class=\"number\"").Element("td", numbers.P, "class=\"number\"")
            .Element("td", Pair(row.SessionsFrom, row.SessionsTo), "class=\"number\"").Element("td", Pair(row.SwingsFrom, row.SwingsTo), "class=\"number\"")
            .Element("td", row.Method).Markup("</tr>");
    }

    private static string Pair(long? from, long? to) => string.Create(CultureInfo.InvariantCulture, $"{from?.ToString(CultureInfo.InvariantCulture) ?? "–"} → {to?.ToString(CultureInfo.InvariantCulture) ?? "–"}");
}
