using System.Globalization;
using SwingStudy.Domain.Findings;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>The answer to the question of the study, what it stands on, and each player's answer: what a reader needs first.</summary>
internal static class AnswerSection
{
    /// <summary>Writes what stands in the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        var primary = report.Tables.Findings.Where(finding => finding.IsPlanned && Comparisons.Is(report, finding.Outcome, OutcomeRole.Primary))
            .OrderBy(finding => Comparisons.OrderOf(report, finding.Outcome, finding.Contrast)).ThenBy(finding => finding.Participant, StringComparer.Ordinal).ToList();
        if (primary.Count == 0)
            html.Element("p", "No finding about a primary outcome yet. 'swingstudy run' makes findings once sessions of two phases are in.");
        foreach (var finding in primary.Where(finding => finding.Participant is null))
            Study(html, report, finding, [.. primary.Where(other => other.Participant is not null && other.Outcome == finding.Outcome && other.Contrast == finding.Contrast)]);
        Facts(html, report);
        Players(html, report, [.. primary.Where(finding => finding.Participant is not null)]);
        html.Folded("What the verdicts mean", VerdictMark.Meanings);
    }

    private static void Study(Html html, StudyReport report, FindingRow finding, List<FindingRow> players)
    {
        html.Markup($"<article class=\"card {VerdictMark.ClassOf(finding.Verdict)}-edge\">").Element("h3", Comparisons.Of(report, finding.Outcome, finding.Contrast))
            .Markup($"<p class=\"answer\">{VerdictMark.Markup(finding.Verdict)}: {Html.Escape(VerdictCounts.Of(report, players))}.</p>")
            .Element("p", Own(finding.Statement)).List(finding.Of(ReasonKind.Evidence).Select(reason => Sentence.Of(reason.Text))).Markup("</article>");
    }

    private static string Own(string statement) => statement.StartsWith("Study: ", StringComparison.Ordinal) ? Sentence.Of(statement["Study: ".Length..]) : statement;

    /// <summary>Plan, chance, people and safety in a line each.</summary>
    private static void Facts(Html html, StudyReport report)
    {
        var deviations = DeviationsSection.RowsOf(report).Count;
        html.Element("h3", "What it stands on").Markup("<ul>")
            .Markup($"<li>{Html.Escape(PlanText(report))} <a href=\"#deviations\">{(deviations == 0 ? "No deviation was found in the data" : string.Create(CultureInfo.InvariantCulture, $"{deviations} {(deviations == 1 ? "deviation" : "deviations")} in the data"))}</a>.</li>")
            .Element("li", MethodsSection.Chance(report.Protocol) + (report.Protocol.Blinding is { } blinding ? " " + Sentence.Of(blinding.How) : ""))
            .Markup($"<li><a href=\"#participants\">Players</a>: {Html.Escape(PeopleText(report))}</li>")
            .Markup($"<li><a href=\"#cautions\">Adverse events</a>: {Html.Escape(SafetySection.Asked(report.Safety.Incidents.Count, report.Safety.Asked.Count))}</li></ul>");
    }

    private static string PlanText(StudyReport report)
    {
        if (report.History.Versions is not [var first, ..])
            return "The plan is not locked: nobody can show that the comparisons were chosen before the data were seen.";
        var amendments = report.History.Versions.Count - 1;
        return string.Create(CultureInfo.InvariantCulture,
            $"The plan was locked on {first.At:uuuu-MM-dd}, {(first.IsAfterData ? "after data that could show an effect" : "before data that could show an effect")}{(amendments == 0 ? ", and not amended" : $", and amended {(amendments == 1 ? "once" : $"{amendments} times")}")}.");
    }

    private static string PeopleText(StudyReport report)
    {
        var counted = report.Tables.Swings.Values.SelectMany(swings => swings).Where(swing => swing.Counts).Select(swing => swing.Participant).Distinct(StringComparer.Ordinal).Count();
        return string.Create(CultureInfo.InvariantCulture, $"{(report.Enrolled > 0 ? $"{report.Enrolled} enrolled, {report.Withdrawn} withdrawn, " : "")}{counted} with swings that count.");
    }

    private static void Players(Html html, StudyReport report, List<FindingRow> findings)
    {
        if (findings.Count == 0)
            return;
        var comparisons = findings.Select(finding => (finding.Outcome, finding.Contrast)).Distinct().ToList();
        html.Element("h3", "Player by player").OpenTableOf("answers", "Verdict and change of each player, with the interval of the change", ["Player", .. comparisons.Select(pair => Comparisons.Of(report, pair.Outcome, pair.Contrast))]);
        foreach (var player in findings.Select(finding => finding.Participant!).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            html.Markup("<tr>").Element("th", player, "scope=\"row\"");
            foreach (var (outcome, contrast) in comparisons)
                html.Markup($"<td>{Cell(report, findings.Find(finding => finding.Participant == player && finding.Outcome == outcome && finding.Contrast == contrast))}</td>");
            html.Markup("</tr>");
        }

        html.CloseTable();
    }

    private static string Cell(StudyReport report, FindingRow? finding)
    {
        if (finding is null)
            return "";
        if (!Comparisons.IsMeasured(report, finding.Participant, finding.Outcome))
            return "not measured";
        var effect = report.Tables.Effects.FirstOrDefault(row => row.Participant == finding.Participant && row.Outcome == finding.Outcome && row.Contrast == finding.Contrast && row.Measure == ChangeFigure.Measure);
        var numbers = effect is null ? null : EffectNumbers.Of(report, effect);
        var text = numbers is null || numbers.Estimate.Length == 0 ? "" : numbers.Interval.Length == 0 ? numbers.Estimate : $"{numbers.Estimate} ({numbers.Interval})";
        return $"{VerdictMark.Markup(finding.Verdict)} {Html.Escape(text)}".TrimEnd();
    }
}
