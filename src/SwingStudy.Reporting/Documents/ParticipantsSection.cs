using System.Globalization;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Who took part, how far each came, and what was left out in which phase.</summary>
internal static class ParticipantsSection
{
    /// <summary>Writes what stands in the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        Flow(html, report);
        foreach (var outcome in report.Protocol.Outcomes.Where(outcome => outcome.Role == OutcomeRole.Primary && report.Tables.Swings.ContainsKey(outcome.Variable)))
            Exclusions(html, report, outcome.Variable);
    }

    private static void Flow(Html html, StudyReport report)
    {
        var swings = report.Tables.Swings.Values.SelectMany(all => all).Where(swing => swing.Counts).ToList();
        html.OpenTable("From enrolment to a verdict", "Step", "#Players");
        if (report.Enrolled > 0)
        {
            Row(html, "Enrolled", report.Enrolled);
            Row(html, "Withdrawn", report.Withdrawn);
        }

        Row(html, "With a counted swing", swings.Select(swing => swing.Participant).Distinct(StringComparer.Ordinal).Count());
        foreach (var phase in report.Protocol.Phases)
        {
            var sessions = swings.Where(swing => swing.Phase == phase.Name).Select(swing => (swing.Participant, swing.Session)).Distinct()
                .CountBy(pair => pair.Participant, StringComparer.Ordinal).ToList();
            Row(html, $"With a session in {phase.Name.Replace('-', ' ')}", sessions.Count);
            if (phase.MinimumSessions > 1)
                Row(html, string.Create(CultureInfo.InvariantCulture, $"With the planned {phase.MinimumSessions} sessions in {phase.Name.Replace('-', ' ')}"), sessions.Count(player => player.Value >= phase.MinimumSessions));
        }

        foreach (var group in report.Tables.Findings.Where(finding => finding is { Participant: not null, IsPlanned: true } && Comparisons.Is(report, finding.Outcome, OutcomeRole.Primary))
            .GroupBy(finding => (finding.Outcome, finding.Contrast)))
        {
            var measured = group.Where(finding => Comparisons.IsMeasured(report, finding.Participant, finding.Outcome)).ToList();
            var what = Comparisons.Lower(Comparisons.Of(report, group.Key.Outcome, group.Key.Contrast));
            if (measured.Count < group.Count())
                Row(html, $"Measured in {what}", measured.Count);
            Row(html, $"Judged in {what}: a verdict other than 'cannot tell'", measured.Count(finding => finding.Verdict != Verdict.CannotTell));
        }

        html.CloseTable();
    }

    private static void Exclusions(Html html, StudyReport report, string outcome)
    {
        html.OpenTable($"{Comparisons.TitleOf(report, outcome)}: values left out, by phase (rules never see the phase)", "Phase", "#Values", "#Left out", "#Share left out");
        foreach (var phase in report.Protocol.Phases)
        {
            var all = report.Tables.Swings[outcome].Where(swing => swing.Phase == phase.Name).ToList();
            var lost = all.Count(swing => !swing.Counts);
            html.Markup("<tr>").Element("th", phase.Name.Replace('-', ' '), "scope=\"row\"").Element("td", Count(all.Count), "class=\"number\"").Element("td", Count(lost), "class=\"number\"")
                .Element("td", all.Count == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * lost / all.Count:0.0} %"), "class=\"number\"").Markup("</tr>");
        }

        html.CloseTable();
    }

    private static void Row(Html html, string step, int players) =>
        html.Markup("<tr>").Element("th", step, "scope=\"row\"").Element("td", Count(players), "class=\"number\"").Markup("</tr>");

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
