using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Each player's sessions, forces and curves, folded under a line with the player's verdicts.</summary>
internal static class PlayersSection
{
    /// <summary>Writes what stands in the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        var players = ReportWriter.ParticipantsOf(report);
        if (players.Count == 0)
            html.Element("p", "No player has a swing yet.");
        if (ForceSection.IsPartOf(report))
            html.Element("p", ForceSection.Note);
        if (CurveSection.IsPartOf(report))
            html.Element("p", CurveSection.Note);
        foreach (var player in players)
            html.Folded(Summary(report, player), inside => Player(inside, report, player), "h3");
    }

    private static string Summary(StudyReport report, string player)
    {
        var verdicts = report.Tables.Findings.Where(finding => finding.IsPlanned && finding.Participant == player && Comparisons.Is(report, finding.Outcome, OutcomeRole.Primary))
            .OrderBy(finding => Comparisons.OrderOf(report, finding.Outcome, finding.Contrast)).Select(finding => $"{Comparisons.Lower(Comparisons.Of(report, finding.Outcome, finding.Contrast))} {finding.Verdict}").ToList();
        return verdicts.Count == 0 ? $"Player {player}" : $"Player {player}: {string.Join("; ", verdicts)}";
    }

    private static void Player(Html html, StudyReport report, string player)
    {
        var figures = ReportFigures.Sessions(report, player);
        if (figures.Count == 0)
            html.Element("p", "No counted swing of a primary outcome.");
        foreach (var figure in figures)
            ReportWriter.Show(html, figure);
        foreach (var figure in ReportFigures.Forces(report, player))
            ReportWriter.Show(html, figure);
        if (CurveSection.IsPartOf(report))
            CurveSection.Of(html, report, player);
    }
}
