using System.Text.RegularExpressions;
using SwingStudy.Reporting.Documents;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;
using SwingStudy.Reporting.Tests.Support;

namespace SwingStudy.Reporting.Tests.Figures;

public class ForceFigureTests
{
    private static readonly StudyReport Report = SomeForces.Report();

    [Fact]
    public void TheTablesGiveTheVerticalForceOfBothFeetAndNoOtherChannel()
    {
        Assert.All(Report.Tables.SwingCurves, curve => Assert.Equal("total_force_y", curve.Channel));
        Assert.Equal(Report.Tables.Swings["club_head_speed"].Count(swing => swing.Participant == "P01"), Report.Tables.SwingCurves.Count);
        Assert.Equal(3 * Report.Tables.SwingCurves.Count, Report.Tables.SwingEvents.Count);
    }

    [Fact]
    public void OneLineIsDrawnForEachCountedSwing()
    {
        var counted = Report.Tables.Swings["club_head_speed"].Where(swing => swing is { Participant: "P01", Counts: true, Phase: "baseline" or "cue" }).ToList();
        var figure = Assert.Single(ReportFigures.Forces(Report, "P01"));

        // Curves have hundreds of points in one stroke, dashed lines a stroke for each dash.
        Assert.Equal(counted.Count, Regex.Matches(figure.Svg, " d=\"M[^M\"]*\"").Count(path => path.Length > 4000));
        Assert.Contains($"baseline ({counted.Count(swing => swing.Phase == "baseline")} swings)", figure.Caption, StringComparison.Ordinal);
        Assert.Contains($"cue ({counted.Count(swing => swing.Phase == "cue")} swings)", figure.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void LinesPeakWhereTheForcePeaks()
    {
        // A peak of 1.6 body weights 60 and 100 ms before impact: 40 of 1300 ms of the field's width apart, and the highest point of all lines.
        var figure = Assert.Single(ReportFigures.Forces(Report, "P01"));
        var peaks = Regex.Matches(figure.Svg, "stroke=\"(#[0-9A-F]{6})\"[^>]* d=\"([^\"]*)\"").Where(path => path.Groups[2].Value.Length > 4000)
            .Select(path => (Colour: path.Groups[1].Value, Peak: Points(path.Groups[2].Value).MinBy(point => point.Y))).GroupBy(line => line.Colour).ToDictionary(group => group.Key, group => group.Average(line => line.Peak.X));

        Assert.Equal(2, peaks.Count);
        var points = 800 - 66 - 118;
        Assert.Equal(40.0 / 1300 * points, peaks["#2B2F33"] - peaks["#0072B2"], 1.0);
        Assert.Equal(66 + (940.0 / 1300 * points), peaks["#2B2F33"], 1.5);
    }

    [Fact]
    public void TheAltTextTellsWhenTheForcePeaksAndWhatWasFound()
    {
        var outcome = "vertical_peak_total_time";
        var report = Report with
        {
            Tables = Report.Tables with
            {
                Swings = new Dictionary<string, IReadOnlyList<ReportedSwing>>(Report.Tables.Swings)
                {
                    [outcome] = [.. Report.Tables.Swings["club_head_speed"].Select(swing => swing with { Value = 1000 * (swing.Phase == "baseline" ? SomeForces.PeakBefore : SomeForces.PeakAfter) })],
                },
                Findings = [.. Report.Tables.Findings, new("player", "P01", outcome, "with-cue", FindingRow.PlannedBasis, Verdict.Supported, "P01: came earlier.", [])],
            },
        };
        var figure = Assert.Single(ReportFigures.Forces(report, "P01"));

        Assert.Contains("force peaks between −60 and −60 ms from impact", figure.AltText, StringComparison.Ordinal);
        Assert.Contains("force peaks between −100 and −100 ms from impact", figure.AltText, StringComparison.Ordinal);
        Assert.EndsWith("Change of the time of the peak: supported.", figure.AltText, StringComparison.Ordinal);
    }

    [Fact]
    public void EventsThatDevicesTellHaveARowAndOthersHaveNone()
    {
        var without = Report with { Tables = Report.Tables with { SwingEvents = [.. Report.Tables.SwingEvents.Where(row => row.Event != "top")] } };

        Assert.Equal(["start", "top", "hands fastest"], Titles(Report));
        Assert.Equal(["start", "hands fastest"], Titles(without));

        static IEnumerable<string> Titles(StudyReport report) =>
            new[] { "start", "top", "hands fastest", "peak of force" }.Where(title => ReportFigures.Forces(report, "P01")[0].Svg.Contains($"\t{title}\n", StringComparison.Ordinal));
    }

    [Fact]
    public void WithoutCurvesOfBothPhasesThereIsNoFigureAndNoSection()
    {
        var cueAlone = Report with { Tables = Report.Tables with { SwingCurves = [.. Report.Tables.SwingCurves.Where(curve => Phase(curve.SwingId) == "cue")] } };

        Assert.Empty(ReportFigures.Forces(cueAlone, "P01"));
        Assert.Empty(ReportFigures.Forces(Report, "P02"));
        Assert.DoesNotContain("Force around impact", ReportWriter.Player(Report, "P02"), StringComparison.Ordinal);
        Assert.DoesNotContain(ForceSection.Note, ReportWriter.Study(Some.Report()), StringComparison.Ordinal);
    }

    [Fact]
    public void PagesShowTheForcesOfThePlayerAndSayWhatTheyAreNot()
    {
        var (page, study) = (ReportWriter.Player(Report, "P01"), ReportWriter.Study(Report));

        Assert.Contains("<h2>Force around impact, before and after</h2>", page, StringComparison.Ordinal);
        Assert.All(new[] { page, study }, text => Assert.Contains("Whether it is a change, only the findings say.", text, StringComparison.Ordinal));
        Assert.Single(Regex.Matches(study, "alt=\"Vertical force of P[0-9]+ over time"));
    }

    private static string? Phase(string swing) => Report.Tables.Swings["club_head_speed"].First(row => row.SwingId == swing).Phase;

    private static IEnumerable<(double X, double Y)> Points(string path)
    {
        var numbers = Regex.Matches(path, "-?[0-9.]+").Select(match => double.Parse(match.Value, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        for (var i = 0; i + 1 < numbers.Length; i += 2)
            yield return (numbers[i], numbers[i + 1]);
    }
}
