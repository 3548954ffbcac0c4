using System.Globalization;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>How far swings and sessions of the outcomes scatter, and how well players can be told apart.</summary>
internal static class ReliabilitySection
{
    private static readonly Dictionary<string, string> Coefficients = new(StringComparer.Ordinal)
    {
        ["icc-2-1"] = "share of scatter between players, ICC(2,1)",
        ["sem"] = "standard error of measurement",
        ["smallest-detectable-change"] = "smallest change that can be told from noise",
        ["session-sd"] = "scatter from session to session (SD)",
        ["swing-sd"] = "scatter from swing to swing (SD)",
        ["typical-error"] = "typical error",
    };

    /// <summary>Writes what stands in the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        html.Element("p", "The smallest change that can be told from noise is that of one further measurement of one player; the findings use each player's own sessions and swings instead.");
        foreach (var outcome in report.Tables.Reliability.GroupBy(row => row.Outcome))
        {
            var title = Comparisons.TitleOf(report, outcome.Key);
            html.Folded(title, inside => Table(inside, report, title, outcome));
        }
    }

    private static void Table(Html html, StudyReport report, string title, IEnumerable<ReliabilityRow> rows)
    {
        html.OpenTable($"Noise and reliability: {Comparisons.Lower(title)}", "Of one", "What", "#Estimate", "#Interval", "#Players", "Method");
        foreach (var row in rows)
        {
            var numbers = EffectNumbers.Of(report, row.Outcome, row.Unit, row.Estimate, row.Low, row.High, double.NaN, isChange: false);
            html.Markup("<tr>").Element("th", row.Level.Replace('-', ' '), "scope=\"row\"").Element("td", Coefficients.GetValueOrDefault(row.Coefficient) ?? row.Coefficient.Replace('-', ' '))
                .Element("td", row.Undefined ?? numbers.Estimate, row.Undefined is null ? "class=\"number\"" : "").Number(numbers.Interval)
                .Number(row.Players?.ToString(CultureInfo.InvariantCulture) ?? "").Element("td", row.Method).Markup("</tr>");
        }

        html.CloseTable();
    }
}
