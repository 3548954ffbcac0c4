using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Figures;

/// <summary>All figures of a report.</summary>
public static class ReportFigures
{
    /// <summary>How the records went from files to counted swings.</summary>
    public static Figure Flow(StudyReport report) => FlowFigure.Draw(report);

    /// <summary>Changes of the primary and secondary outcomes, one figure an outcome and contrast, in the protocol's order.</summary>
    public static IReadOnlyList<Figure> Changes(StudyReport report) => Changes(report, OutcomeRole.Primary, OutcomeRole.Secondary);

    /// <summary>Changes of the outcomes of some roles.</summary>
    public static IReadOnlyList<Figure> Changes(StudyReport report, params OutcomeRole[] roles) =>
    [
        .. DrawnOutcomes(report, roles)
            .SelectMany(outcome => report.Protocol.Contrasts
                .Where(contrast => outcome.Contrasts.Count == 0 || outcome.Contrasts.Contains(contrast.Name))
                .Select(contrast => ChangeFigure.Draw(report, outcome, contrast)))
            .OfType<Figure>(),
    ];

    /// <summary>Sessions of one player, one figure for each primary outcome.</summary>
    public static IReadOnlyList<Figure> Sessions(StudyReport report, string participant) =>
        [.. DrawnOutcomes(report, OutcomeRole.Primary).Select(outcome => OutcomeFigure.Draw(report, outcome, participant)).OfType<Figure>()];

    /// <summary>Mean curves of one player, one figure for each channel and contrast that the protocol names.</summary>
    public static IReadOnlyList<Figure> Curves(StudyReport report, string participant) =>
    [
        .. report.Protocol.Curves
            .SelectMany(curve => report.Protocol.Contrasts
                .Where(contrast => curve.Contrasts.Count == 0 || curve.Contrasts.Contains(contrast.Name))
                .Select(contrast => CurveFigure.Draw(report, curve.Channel, contrast, participant)))
            .OfType<Figure>(),
    ];

    /// <summary>Vertical force around impact of one player, swing by swing, for the first contrast that the protocol names.</summary>
    public static IReadOnlyList<Figure> Forces(StudyReport report, string participant) =>
        [.. report.Protocol.Contrasts.Take(1).Select(contrast => ForceFigure.Draw(report, contrast, participant)).OfType<Figure>()];

    private static IEnumerable<OutcomeMeasure> DrawnOutcomes(StudyReport report, params OutcomeRole[] roles) =>
        report.Protocol.Outcomes.Where(outcome => roles.Contains(outcome.Role) && report.Tables.Swings.ContainsKey(outcome.Variable));
}
