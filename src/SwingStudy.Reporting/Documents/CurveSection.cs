using System.Globalization;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Whole curves of the channels that the protocol names, player by player.</summary>
internal static class CurveSection
{
    /// <summary>What the tests say, and what they do not.</summary>
    public const string Note = "Each test of curves is over the whole curve: its p says how often chance alone makes the phases differ as much anywhere. Where sessions are exchanged the test "
        + "knows how much days differ. Where a phase has too few sessions swings are exchanged: then another day can look like another movement, and no verdict rests on it. A span "
        + "shows where the difference stands out; its ends are not exact.";

    /// <summary>Whether the report has curves.</summary>
    public static bool IsPartOf(StudyReport report) => report.Protocol.Curves.Count > 0;

    /// <summary>Writes the curves of one player, folded.</summary>
    public static void Player(Html html, StudyReport report, string participant)
    {
        if (IsPartOf(report))
            html.Folded("Where in the swing curves differ", inside => Of(inside.Element("p", Note), report, participant), "h2");
    }

    /// <summary>Writes the figures and tests of one player.</summary>
    public static void Of(Html html, StudyReport report, string player)
    {
        var figures = ReportFigures.Curves(report, player);
        var tests = report.Tables.CurveTests.Where(row => row.Participant == player && row.Measure is (CurveTestRow.Whole or CurveTestRow.Span)).ToList();
        if (figures.Count + tests.Count == 0)
            html.Element("p", "No curves of the channels that the protocol compares.");
        foreach (var figure in figures)
            ReportWriter.Show(html, figure);
        if (tests.Count > 0)
            Tests(html, report, player, tests);
    }

    private static void Tests(Html html, StudyReport report, string player, List<CurveTestRow> tests)
    {
        html.OpenTable($"Curve tests of {player}", "Curve", "From and to", "Where", "After", "#Largest |t|", "#p", "Exchanged", "#Swings", "#Sessions");
        foreach (var row in tests)
        {
            var isPhases = report.Tables.CurveMeans.Any(mean => mean.Participant == player && mean.Channel == row.Channel && mean.Axis == CurveMeanRow.SwingPhases);
            html.Markup("<tr>").Element("th", CurveText.Title(row.Channel), "scope=\"row\"").Element("td", Comparisons.ContrastOf(report, row.Contrast))
                .Element("td", row.Measure == CurveTestRow.Whole ? "whole curve" : CurveText.Span(row, isPhases)).Element("td", row.Direction ?? "")
                .Element("td", double.IsNaN(row.Statistic) ? row.Undefined ?? "" : ValueDisplay.Number(row.Statistic, 2), double.IsNaN(row.Statistic) ? "" : "class=\"number\"")
                .Element("td", double.IsNaN(row.P) ? "" : CurveText.P(row.P), "class=\"number\"").Element("td", row.Permuted ?? "")
                .Element("td", Pair(row.SwingsFrom, row.SwingsTo), "class=\"number\"").Element("td", Pair(row.SessionsFrom, row.SessionsTo), "class=\"number\"").Markup("</tr>");
        }

        html.CloseTable();
    }

    private static string Pair(long? from, long? to) => string.Create(CultureInfo.InvariantCulture, $"{from ?? 0} and {to ?? 0}");
}
