using System.Globalization;
using SwingStudy.Domain.Findings;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>
/// One player's page for player and coach, one sheet on paper: what changed, is it real and why, what moved with it, what else could explain it, what to do
/// next. What only some readers want is folded below, and not printed unless it is opened.
/// </summary>
internal static class PlayerPage
{
    /// <summary>Writes the page.</summary>
    public static string Write(StudyReport report, string participant)
    {
        var html = ReportWriter.Begin($"Player {participant}, {report.Name}", report.Protocol.Question, "player");
        var findings = report.Tables.Findings.Where(finding => finding.Participant == participant && Comparisons.IsMeasured(report, participant, finding.Outcome))
            .OrderBy(finding => Comparisons.OrderOf(report, finding.Outcome, finding.Contrast)).ToList();
        var primary = findings.Where(finding => finding.IsPlanned && Comparisons.Is(report, finding.Outcome, OutcomeRole.Primary)).ToList();
        html.Markup("<section id=\"findings\">").Element("h2", "What changed, and is it real?");
        if (primary.Count == 0)
            html.Element("p", "No planned comparison of a primary outcome yet. 'swingstudy run' makes findings once sessions of two phases are in.");
        foreach (var finding in primary)
            Card(html, report, finding, participant);
        foreach (var figure in ReportFigures.Sessions(report, participant))
            ReportWriter.Show(html, figure);
        HowToRead(html, report, participant);
        html.Markup("</section>").Markup("<div class=\"more\">");
        Others(html, report, "Other planned comparisons", [.. findings.Where(finding => finding.IsPlanned).Except(primary)], participant);
        Others(html, report, "Looked at without a plan before data: these suggest questions and support nothing", [.. findings.Where(finding => !finding.IsPlanned)], participant);
        ForceSection.Player(html, report, participant);
        CurveSection.Player(html, report, participant);
        html.Folded("What the answers rest on", inside => Rests(inside, report, findings, primary), "h2")
            .Folded("Cautions and safety", inside => SafetySection.Write(inside, report, participant), "h2")
            .Markup("</div>");
        html.Element("p", $"Made from protocol {report.Protocol.Name} {report.Protocol.Version} ({report.Protocol.Hash.ToString()[..12]}) and the tables named in the study's report; 'swingstudy audit trace' leads from each number to file, row and raw text.", "class=\"origin\"");
        return ReportWriter.End(html);
    }

    private static void Card(Html html, StudyReport report, FindingRow finding, string participant)
    {
        html.Markup($"<article class=\"card {VerdictMark.ClassOf(finding.Verdict)}-edge\">").Element("h3", Comparisons.Of(report, finding.Outcome, finding.Contrast))
            .Markup($"<p class=\"answer\"><span class=\"verdict {VerdictMark.ClassOf(finding.Verdict)}\">{VerdictMark.Sign(finding.Verdict)}{Html.Escape(VerdictMark.Answer(finding.Verdict))}.</span> ({Html.Escape(finding.Verdict)})</p>")
            .Element("p", Own(finding.Statement, participant));
        List(html, "What moved with it", finding.Of(ReasonKind.Mechanism));
        List(html, "What else could explain it, or limits it", finding.Of(ReasonKind.Rival).Where(reason => !IsOfTheStudy(reason)));
        List(html, "What to do next to be surer", finding.Of(ReasonKind.NextStep));
        html.Markup("</article>");
    }

    private static void Others(Html html, StudyReport report, string heading, List<FindingRow> findings, string participant)
    {
        if (findings.Count == 0)
            return;
        html.Folded(heading, inside =>
        {
            inside.OpenTableOf("findings", "One row a comparison", "Comparison", "Verdict", "What was found, and what could explain it otherwise");
            foreach (var finding in findings)
            {
                inside.Markup("<tr>").Element("th", Comparisons.Of(report, finding.Outcome, finding.Contrast), "scope=\"row\"").Markup($"<td>{VerdictMark.Markup(finding.Verdict)}</td><td>")
                    .Element("p", Own(finding.Statement, participant))
                    .List(finding.Of(ReasonKind.Rival).Where(reason => !IsOfTheStudy(reason) && !reason.Code.StartsWith("few-", StringComparison.Ordinal)).Select(reason => Sentence.Of(reason.Text))).Markup("</td></tr>");
            }

            inside.CloseTable();
        }, "h2");
    }

    private static void HowToRead(Html html, StudyReport report, string participant) => html.Element("h3", "How to read this page").Markup("<ul class=\"reading\">")
        .Element("li", "Nobody swings twice alike, and no day is like the next. A change counts only when it is larger than what this player's own swings and days vary by.")
        .Element("li", string.Create(CultureInfo.InvariantCulture, $"The {100 * report.Protocol.Analysis.Confidence:0.#} % confidence interval is the range of true changes that fit the data; about once in {Math.Round(1 / (1 - report.Protocol.Analysis.Confidence)):0} times the true change lies outside."))
        .Element("li", "'Not shown' does not say that nothing changed, only that these sessions cannot show it. More sessions say more; more swings of the same day hardly do.")
        .Element("li", $"Adverse events of {participant}: {SafetySection.Asked(report.Safety.Incidents.Count(incident => incident.Participant == participant), report.Safety.Asked.Count(player => player == participant))} Not a medical device; no diagnosis.")
        .Markup("</ul>");

    private static void Rests(Html html, StudyReport report, List<FindingRow> findings, List<FindingRow> primary)
    {
        foreach (var finding in primary)
        {
            List<string> reasons = [.. finding.Of(ReasonKind.Evidence).Where(reason => !IsOfTheStudy(reason)).Select(reason => Sentence.Of(reason.Text))];
            if (reasons.Count > 0)
                html.Element("h3", Comparisons.Of(report, finding.Outcome, finding.Contrast)).List(reasons);
        }

        List<string> whole = [.. findings.SelectMany(finding => finding.Reasons).Where(IsOfTheStudy).Select(reason => Sentence.Of(reason.Text)).Distinct(StringComparer.Ordinal)];
        if (whole.Count > 0)
            html.Element("h3", "What the study as a whole leaves open").List(whole);
        html.Element("h3", "What the verdicts mean");
        VerdictMark.Meanings(html);
    }

    private static void List(Html html, string heading, IEnumerable<Reason> reasons)
    {
        var all = reasons.Select(reason => Sentence.Of(reason.Text)).ToList();
        if (all.Count > 0)
            html.Element("h4", heading).List(all);
    }

    /// <summary>What holds for the study as a whole is said once.</summary>
    private static bool IsOfTheStudy(Reason reason) => reason.Kind == ReasonKind.Standard || reason.Code is "not-randomized" or "not-blinded" or ReasonCode.NotLocked;

    /// <summary>The page is about one player: the name at the head of each sentence is left out.</summary>
    private static string Own(string statement, string participant) =>
        statement.StartsWith(participant + ": ", StringComparison.Ordinal) ? Sentence.Of(statement[(participant.Length + 2)..]) : statement;
}
