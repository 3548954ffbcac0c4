using System.Globalization;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Findings with their reasons, and the changes behind them.</summary>
internal static class FindingSections
{
    /// <summary>Writes both sections; for one player only that player's rows.</summary>
    public static void Write(Html html, StudyReport report, string? participant)
    {
        html.Markup("<section id=\"findings\">").Element("h2", "Findings");
        List<FindingRow> study = participant is null ? [.. report.Tables.Findings.Where(finding => finding.Participant is null)] : [];
        var players = report.Tables.Findings.Where(finding => finding.Participant is { } player && (participant is null || player == participant))
            .OrderBy(finding => OrderOf(report, finding)).ThenBy(finding => finding.Participant, StringComparer.Ordinal).ToList();
        if (study.Count + players.Count == 0)
            html.Element("p", "No findings yet. 'swingstudy run' makes them once sessions of two phases are in.");
        if (participant is null && players.Count > 0)
            Summary(html, report, players);
        if (study.Count > 0)
            Table(html, report, "The study as a whole", study, false);
        foreach (var group in players.GroupBy(finding => (finding.Outcome, finding.Contrast)))
            Table(html, report, $"{TitleOf(report, group.Key.Outcome)}, {ContrastOf(report, group.Key.Contrast)}", [.. group], true);
        html.Markup("</section>").Markup("<section id=\"changes\">").Element("h2", "Changes with their uncertainty");
        if (participant is null)
        {
            foreach (var figure in ReportFigures.Changes(report))
                ReportWriter.Show(html, figure);
        }

        Effects(html, report, participant);
        html.Markup("</section>");
    }

    private static void Summary(Html html, StudyReport report, List<FindingRow> players)
    {
        var primary = report.Protocol.Outcomes.Where(outcome => outcome.Role == OutcomeRole.Primary).Select(outcome => outcome.Variable).ToHashSet();
        foreach (var group in players.Where(finding => finding.Outcome is { } outcome && primary.Contains(outcome)).GroupBy(finding => (finding.Outcome, finding.Contrast)))
        {
            var counts = Verdict.All.Select(verdict => (verdict, count: group.Count(finding => finding.Verdict == verdict))).Where(pair => pair.count > 0);
            html.Element("p", string.Create(
                CultureInfo.InvariantCulture,
                $"{TitleOf(report, group.Key.Outcome)}, {ContrastOf(report, group.Key.Contrast)}: of {group.Count()} players {string.Join(", ", counts.Select(pair => $"{pair.count} {pair.verdict}"))}."));
        }
    }

    private static void Table(Html html, StudyReport report, string caption, IReadOnlyList<FindingRow> findings, bool players)
    {
        html.OpenTableOf("findings", caption, players ? "Player" : "About", "Verdict", "Statement and reasons");
        foreach (var finding in findings)
        {
            var about = players ? finding.Participant! : finding.Outcome is null ? "study" : $"{TitleOf(report, finding.Outcome)}, {ContrastOf(report, finding.Contrast)}";
            html.Markup("<tr>").Element("th", about, "scope=\"row\"")
                .Markup($"<td class=\"verdict {ClassOf(finding.Verdict)}\">{Sign(finding.Verdict)}{Html.Escape(finding.Verdict)}</td><td>")
                .Element("p", finding.Statement).List(finding.Reasons).Markup("</td></tr>");
        }

        html.CloseTable();
    }

    private static void Effects(Html html, StudyReport report, string? participant)
    {
        foreach (var planned in new[] { true, false })
        {
            var rows = report.Tables.Effects.Where(row => row.Planned == planned && (participant is null || row.Participant == participant)).ToList();
            foreach (var group in rows.GroupBy(row => (row.Outcome, row.Contrast)))
            {
                var confidence = report.Protocol.Analysis.Confidence.ToString("P0", CultureInfo.InvariantCulture).Replace(" ", "", StringComparison.Ordinal);
                html.OpenTable(
                    $"{TitleOf(report, group.Key.Outcome)}, {ContrastOf(report, group.Key.Contrast)}{(planned ? "" : " (exploratory: not named in the protocol)")}",
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

    private static int OrderOf(StudyReport report, FindingRow finding)
    {
        var outcome = report.Protocol.Outcomes.ToList().FindIndex(candidate => candidate.Variable == finding.Outcome);
        var contrast = report.Protocol.Contrasts.ToList().FindIndex(candidate => candidate.Name == finding.Contrast);
        return ((outcome < 0 ? 999 : outcome) * 1000) + (contrast < 0 ? 999 : contrast);
    }

    private static string TitleOf(StudyReport report, string? outcome) =>
        outcome is not null && report.Dictionary.TryGet(outcome, out var variable) ? variable.Title : outcome ?? "Study";

    private static string ContrastOf(StudyReport report, string? contrast) =>
        report.Protocol.Contrasts.FirstOrDefault(candidate => candidate.Name == contrast) is { } found
            ? $"{found.From.Replace('-', ' ')} to {found.To.Replace('-', ' ')}"
            : contrast?.Replace('-', ' ') ?? "all phases";

    private static string ClassOf(string verdict) => Verdict.All.Contains(verdict) ? verdict.Replace(' ', '-') : "";

    /// <summary>The sign that figures give the verdict.</summary>
    private static string Sign(string verdict) => verdict switch
    {
        Verdict.Supported => Drawn("<circle cx=\"8\" cy=\"8\" r=\"7\" fill=\"currentColor\"/>"),
        Verdict.Suggestive => Drawn("<path d=\"M8 0l8 8-8 8-8-8z\" fill=\"currentColor\"/>"),
        Verdict.NotShown => Drawn("<path d=\"M2 2h12v12H2z\" fill=\"currentColor\"/>"),
        Verdict.CannotTell => Drawn("<path d=\"M8 2l6.5 12h-13z\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2\"/>"),
        _ => "",
    };

    private static string Drawn(string shape) => $"<svg viewBox=\"0 0 16 16\" aria-hidden=\"true\">{shape}</svg>";
}
