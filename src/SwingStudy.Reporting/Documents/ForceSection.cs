using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Force against time around impact, player by player, where plates were used.</summary>
internal static class ForceSection
{
    /// <summary>Whether the report has the section.</summary>
    public static bool IsPartOf(StudyReport report) => report.Tables.SwingCurves.Count > 0;

    /// <summary>Writes the forces of all players.</summary>
    public static void Players(Html html, StudyReport report) => Write(html, report, "Forces around impact, player by player", [.. ReportWriter.ParticipantsOf(report)]);

    /// <summary>Writes the forces of one player.</summary>
    public static void Player(Html html, StudyReport report, string participant) => Write(html, report, "Force around impact, before and after", [participant]);

    private static void Write(Html html, StudyReport report, string heading, IReadOnlyList<string> players)
    {
        var figures = players.SelectMany(player => ReportFigures.Forces(report, player).Select(figure => (Player: player, Figure: figure))).ToList();
        if (figures.Count == 0)
            return;
        html.Markup("<section id=\"forces\">").Element("h2", heading)
            .Element("p", "Single swings as measured: they show what moved and how much it scatters. Whether it is a change, only the findings say.");
        foreach (var (player, figure) in figures)
        {
            if (players.Count > 1)
                html.Element("h3", $"Player {player}");
            ReportWriter.Show(html, figure);
        }

        html.Markup("</section>");
    }
}
