using System.Globalization;
using SwingStudy.Domain.Units;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>The players together: mean effects, how far players differ, and where a further player may lie. Never a mean alone.</summary>
internal static class GroupSection
{
    /// <summary>Writes the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        html.Markup("<section id=\"together\">").Element("h2", "Players together");
        var rows = report.Tables.Group.OrderBy(row => Comparisons.OrderOf(report, row.Outcome, row.Contrast)).ToList();
        if (rows.Count == 0)
            html.Element("p", "No estimate over players yet.");
        Table(html, report, "Planned comparisons", [.. rows.Where(row => row.Planned)]);
        Table(html, report, "Exploratory comparisons: not planned before data", [.. rows.Where(row => !row.Planned)]);
        html.Markup("</section>");
    }

    private static void Table(Html html, StudyReport report, string caption, List<GroupRow> rows)
    {
        if (rows.Count == 0)
            return;
        html.OpenTable(caption, "Comparison", "Measure", "#Estimate", "#Interval", "#p, adjusted", "#A further player", "#Between players", "#Players");
        foreach (var row in rows)
        {
            var numbers = Numbers(report, row);
            html.Markup("<tr>").Element("th", Comparisons.Of(report, row.Outcome, row.Contrast), "scope=\"row\"").Element("td", Measure(row.Measure))
                .Element("td", row.Undefined ?? numbers(row.Estimate, true), row.Undefined is null ? "class=\"number\"" : "")
                .Element("td", Range(numbers, row.Low, row.High), "class=\"number\"").Element("td", P(row), "class=\"number\"")
                .Element("td", Range(numbers, row.PredictionLow, row.PredictionHigh), "class=\"number\"")
                .Element("td", double.IsFinite(row.ISquared) ? string.Create(CultureInfo.InvariantCulture, $"{row.ISquared:0} %") : "", "class=\"number\"")
                .Element("td", row.Players?.ToString(CultureInfo.InvariantCulture) ?? "", "class=\"number\"").Markup("</tr>");
        }

        html.CloseTable();
    }

    private static string Measure(string measure) => measure switch
    {
        GroupRow.Difference => "mean change",
        GroupRow.IndividualResponse => "spread of true changes between players (SD)",
        GroupRow.PlayersSupported => "players with a supported change",
        GroupRow.RandomizationTest => "randomization test, mean over players",
        _ => "mean of " + measure.Replace('-', ' '),
    };

    private static string P(GroupRow row) => double.IsFinite(row.AdjustedP)
        ? $"{EffectNumbers.ProbabilityText(row.P)}, {EffectNumbers.ProbabilityText(row.AdjustedP)}"
        : EffectNumbers.ProbabilityText(row.P);

    private static string Range(Func<double, bool, string> number, double low, double high) =>
        double.IsFinite(low) && double.IsFinite(high) ? $"{number(low, false)} to {number(high, false)}" : "";

    /// <summary>Numbers in the outcome's display unit where the row has the outcome's unit; whole for counts.</summary>
    private static Func<double, bool, string> Numbers(StudyReport report, GroupRow row)
    {
        if (row.Measure == GroupRow.PlayersSupported)
            return (value, _) => ValueDisplay.Number(value, 0);
        var display = report.Dictionary.TryGet(row.Outcome, out var variable) && variable.Unit is { } unit && unit == row.Unit && unit != "1" ? new ValueDisplay(variable) : null;
        var symbol = display?.Symbol ?? (row.Unit is { } code && code != "1" ? UnitCatalogue.ParseCode(code)?.Symbol ?? code : "");
        return (value, withUnit) =>
        {
            var text = display is null ? ValueDisplay.Number(value, 2) : row.Measure == GroupRow.IndividualResponse ? ValueDisplay.Number(display.Difference(value), display.Decimals) : display.Signed(display.Difference(value));
            return withUnit ? $"{text} {symbol}".TrimEnd() : text;
        };
    }
}
