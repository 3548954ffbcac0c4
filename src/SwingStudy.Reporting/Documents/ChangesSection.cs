using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>The figures of changes: primary outcomes open, secondary ones folded.</summary>
internal static class ChangesSection
{
    /// <summary>Writes what stands in the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        var (primary, secondary) = (ReportFigures.Changes(report, OutcomeRole.Primary), ReportFigures.Changes(report, OutcomeRole.Secondary));
        if (primary.Count + secondary.Count == 0)
            html.Element("p", "No change can be given yet: it needs swings that count in two phases.");
        foreach (var figure in primary)
            ReportWriter.Show(html, figure);
        if (secondary.Count == 0)
            return;
        html.Folded("Secondary outcomes", inside =>
        {
            foreach (var figure in secondary)
                ReportWriter.Show(inside, figure);
        });
    }
}
