using System.Globalization;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>The players together: mean effects, how far players differ, and where a further player may lie. Never a mean alone.</summary>
internal static class GroupSection
{
    /// <summary>Writes what stands in the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        var rows = report.Tables.Group.OrderBy(row => Comparisons.OrderOf(report, row.Outcome, row.Contrast)).ToList();
        if (rows.Count == 0)
            html.Element("p", "No estimate over players yet.");
        else
            html.Element("p", "A mean says little of one player: 'a further player' is the range in which the true change of a player outside this study may lie, 'between players' the share of the variation that is real difference between players (I²).");
        var planned = rows.FindAll(row => row.Planned);
        Table(html, report, "Primary outcomes", planned.FindAll(row => Comparisons.Is(report, row.Outcome, OutcomeRole.Primary)));
        Folded(html, report, "Secondary and mechanism outcomes", planned.FindAll(row => !Comparisons.Is(report, row.Outcome, OutcomeRole.Primary)));
        Folded(html, report, "Exploratory comparisons: not planned before data", rows.FindAll(row => !row.Planned));
    }

    private static void Folded(Html html, StudyReport report, string caption, List<GroupRow> rows)
    {
        if (rows.Count > 0)
            html.Folded(caption, inside => Table(inside, report, caption, rows));
    }

    private static void Table(Html html, StudyReport report, string caption, List<GroupRow> rows)
    {
        if (rows.Count == 0)
            return;
        html.OpenTable(caption, "Measure", "#Estimate", "#Interval", "#p, adjusted", "#A further player", "#Between players", "#Players");
        foreach (var comparison in rows.GroupBy(row => (row.Outcome, row.Contrast)))
        {
            html.GroupHeading(Comparisons.Of(report, comparison.Key.Outcome, comparison.Key.Contrast), columns: 7);
            foreach (var row in comparison)
                Row(html, report, row);
        }

        html.CloseTable();
    }

    private static void Row(Html html, StudyReport report, GroupRow row)
    {
        var players = row.Players?.ToString(CultureInfo.InvariantCulture) ?? "";
        html.Markup("<tr>").Element("th", Measure(row.Measure), "scope=\"row\"");
        if (row.Undefined is { } reason)
        {
            html.Element("td", reason, "colspan=\"5\"").Number(players).Markup("</tr>");
            return;
        }

        var numbers = EffectNumbers.Of(report, row.Outcome, row.Unit, row.Estimate, row.Low, row.High, row.P, isChange: row.Measure == GroupRow.Difference);
        html.Number(row.Measure == GroupRow.PlayersSupported ? ValueDisplay.Number(row.Estimate, 0) : numbers.Estimate)
            .Number(numbers.Interval).Number(P(row)).Number(EffectNumbers.RangeOf(report, row, row.PredictionLow, row.PredictionHigh))
            .Number(double.IsFinite(row.ISquared) ? string.Create(CultureInfo.InvariantCulture, $"{row.ISquared:0} %") : "").Number(players).Markup("</tr>");
    }

    private static string Measure(string measure) => measure switch
    {
        GroupRow.Difference => "mean change",
        GroupRow.IndividualResponse => "spread of true changes between players (SD)",
        GroupRow.PlayersSupported => "players with a supported change",
        GroupRow.RandomizationTest => "randomization test, mean over players",
        _ => "mean of " + MethodWords.TitleOf(measure),
    };

    private static string P(GroupRow row) => double.IsFinite(row.AdjustedP)
        ? $"{EffectNumbers.ProbabilityText(row.P)}, {EffectNumbers.ProbabilityText(row.AdjustedP)}"
        : EffectNumbers.ProbabilityText(row.P);
}
