using System.Globalization;
using SwingStudy.Domain.Findings;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Findings about all but the planned primary outcomes, one row a comparison: the study, then the players by verdict.</summary>
internal static class OtherOutcomesSection
{
    /// <summary>Whether a planned finding stands in this section.</summary>
    public static bool Shows(StudyReport report, FindingRow finding) => finding.IsPlanned && finding.Outcome is not null && !Comparisons.Is(report, finding.Outcome, OutcomeRole.Primary);

    /// <summary>Writes the planned ones.</summary>
    public static void Planned(Html html, StudyReport report)
    {
        html.Element("p", "Mechanism outcomes say what in the movement changed along with the primary outcome; that they changed together does not show that one made the other.");
        Table(html, report, "Planned comparisons of secondary and mechanism outcomes", [.. report.Tables.Findings.Where(finding => Shows(report, finding))]);
    }

    /// <summary>Writes what nobody planned before data.</summary>
    public static void Exploratory(Html html, StudyReport report)
    {
        html.Element("p", "Comparisons that the protocol does not name, or names only since data could be seen. They suggest questions for the next study and support nothing.");
        Table(html, report, "Comparisons that nobody planned before data", [.. report.Tables.Findings.Where(finding => !finding.IsPlanned)]);
    }

    private static void Table(Html html, StudyReport report, string caption, List<FindingRow> findings)
    {
        html.OpenTableOf("findings", caption, "Comparison", "All players", "Players by verdict, with their change", "What else could explain it");
        foreach (var group in findings.OrderBy(finding => Comparisons.OrderOf(report, finding.Outcome, finding.Contrast)).GroupBy(finding => (finding.Outcome, finding.Contrast)))
        {
            html.Markup("<tr>").Markup($"<th scope=\"row\">{Html.Escape(Comparisons.Of(report, group.Key.Outcome, group.Key.Contrast))}{Role(report, group.Key.Outcome)}</th><td>");
            if (group.FirstOrDefault(finding => finding.Participant is null) is { } study)
                html.Markup($"<p>{VerdictMark.Markup(study.Verdict)}</p>");
            if (Mean(report, group.Key.Outcome, group.Key.Contrast) is { } mean)
                html.Element("p", mean);
            html.Markup("</td><td>");
            List<FindingRow> players = [.. group.Where(finding => finding.Participant is not null).OrderBy(finding => finding.Participant, StringComparer.Ordinal)];
            foreach (var line in Lines(report, players))
                html.Markup($"<p>{line}</p>");
            html.Markup("</td><td>");
            Rivals(html, report, players);
            html.Markup("</td></tr>");
        }

        html.CloseTable();
    }

    private static string Role(StudyReport report, string? outcome) =>
        report.Protocol.Outcomes.FirstOrDefault(candidate => candidate.Variable == outcome) is { } found ? $" <span class=\"role\">({Domain.Identifiers.Word.Of(found.Role)})</span>" : "";

    /// <summary>The mean change over players with its interval; null without one.</summary>
    private static string? Mean(StudyReport report, string? outcome, string? contrast)
    {
        if (report.Tables.Group.FirstOrDefault(row => row.Outcome == outcome && row.Contrast == contrast && row.Measure == GroupRow.Difference) is not { Undefined: null } row)
            return null;
        var numbers = EffectNumbers.Of(report, row.Outcome, row.Unit, row.Estimate, row.Low, row.High, row.P, isChange: true);
        return numbers.Estimate.Length == 0 ? null : $"mean {numbers.Estimate} ({numbers.Interval})";
    }

    private static IEnumerable<string> Lines(StudyReport report, List<FindingRow> players)
    {
        var measured = players.FindAll(finding => Comparisons.IsMeasured(report, finding.Participant, finding.Outcome));
        foreach (var group in measured.GroupBy(finding => finding.Verdict).OrderBy(group => Verdict.All.ToList().IndexOf(group.Key)))
            yield return $"{VerdictMark.Markup(group.Key)}: {Html.Escape(string.Join("; ", group.Select(finding => Change(report, finding))))}";
        if (measured.Count < players.Count)
            yield return $"not measured: {Html.Escape(string.Join(", ", players.Except(measured).Select(finding => finding.Participant)))}";
    }

    private static string Change(StudyReport report, FindingRow finding)
    {
        var effect = report.Tables.Effects.FirstOrDefault(row => row.Participant == finding.Participant && row.Outcome == finding.Outcome && row.Contrast == finding.Contrast && row.Measure == ChangeFigure.Measure);
        return effect is null ? finding.Participant! : $"{finding.Participant} {EffectNumbers.Of(report, effect).Estimate}".TrimEnd();
    }

    /// <summary>Rival explanations of the changes that something speaks for; what holds for the whole study stands under limits.</summary>
    private static void Rivals(Html html, StudyReport report, List<FindingRow> players)
    {
        List<string> all =
        [
            .. players.Where(finding => finding.Verdict is Verdict.Supported or Verdict.Suggestive)
                .SelectMany(finding => finding.Of(ReasonKind.Rival).Where(IsOfPlayer).Select(reason => $"{finding.Participant}: {Sentence.Of(reason.Text)}")),
        ];
        if (all.Count == 0)
            html.Markup(players.Exists(finding => finding.Verdict is Verdict.Supported or Verdict.Suggestive) ? "nothing found" : "");
        else
            html.Folded(string.Create(CultureInfo.InvariantCulture, $"{all.Count} {(all.Count == 1 ? "point" : "points")}"), inside => inside.List(all));
    }

    private static bool IsOfPlayer(Reason reason) => reason.Code is not ("not-randomized" or "not-blinded" or ReasonCode.NotLocked);
}
