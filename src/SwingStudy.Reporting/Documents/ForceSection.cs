using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Force against time around impact, where plates were used.</summary>
internal static class ForceSection
{
    /// <summary>What the figures show, and what they do not.</summary>
    public const string Note = "Forces around impact are single swings as measured: they show what moved and how much it scatters. Whether it is a change, only the findings say.";

    /// <summary>Whether the report has forces.</summary>
    public static bool IsPartOf(StudyReport report) => report.Tables.SwingCurves.Count > 0;

    /// <summary>Writes the forces of one player, folded; nothing where there are none.</summary>
    public static void Player(Html html, StudyReport report, string participant)
    {
        var figures = ReportFigures.Forces(report, participant);
        if (figures.Count == 0)
            return;
        html.Folded("Force around impact, before and after", inside =>
        {
            inside.Element("p", Note);
            foreach (var figure in figures)
                ReportWriter.Show(inside, figure);
        }, "h2");
    }
}
