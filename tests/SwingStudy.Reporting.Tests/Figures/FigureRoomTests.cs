using System.Text.RegularExpressions;
using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Documents;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Tests.Support;

namespace SwingStudy.Reporting.Tests.Figures;

/// <summary>No text of a figure is cut at an edge or covers another, whatever the study.</summary>
public class FigureRoomTests
{
    private const string LongTitle = "Time of peak vertical force of both feet before the hands are fastest";

    private static readonly string[] LongPhases = ["ordinary-practice-without-a-cue", "cue-given-by-the-coach-each-time", "twelve-weeks-later-on-the-course"];

    [Theory]
    [InlineData(1, "Club head speed", 1)]
    [InlineData(24, "Club head speed", 1)]
    [InlineData(8, LongTitle, 1)]
    [InlineData(8, "Peak", 1000)]
    [InlineData(8, LongTitle, 0.0001)]
    public void TextsOfChangesAndSessionsHaveRoom(int players, string title, double scale)
    {
        var report = SomeStudies.OfPlayers(players, title, scale);
        var figures = ReportFigures.Changes(report).Concat(ReportFigures.Sessions(report, "P01")).ToList();

        Assert.Equal(3, figures.Count);
        HaveRoom(figures);
    }

    [Fact]
    public void LongNamesOfPhasesHaveRoom()
    {
        var report = SomeStudies.OfPlayers(2, phases: LongPhases);

        HaveRoom(ReportFigures.Changes(report).Concat(ReportFigures.Sessions(report, "P01")));
    }

    [Theory]
    [InlineData("total_force_y")]
    [InlineData("lead_force_x")]
    [InlineData("separation")]
    public void TextsOfCurvesHaveRoom(string channel)
    {
        var report = SomeCurves.Report();
        report = report with
        {
            Protocol = report.Protocol with { Curves = [new CurvePlan(channel, ["with-cue"])] },
            Tables = report.Tables with { CurveMeans = [.. report.Tables.CurveMeans.Select(row => row with { Channel = channel })] },
        };

        Assert.Contains(channel, SwingChannels.Names);
        HaveRoom(Assert.Single(ReportFigures.Curves(report, "P01")), Assert.Single(ReportFigures.Curves(report, "P02")));
    }

    [Fact]
    public void TextsOfTheFlowHaveRoomHoweverManyReasonsThereAre()
    {
        var report = Some.Report();
        var reasons = new[] { "replaced", "no-session", "missed-or-false", "low-confidence", "unknown-player", "outside-window", "zero", "quiet", "a word that nobody explains, as long as a whole sentence of reasons" };

        HaveRoom(ReportFigures.Flow(report));
        HaveRoom(ReportFigures.Flow(Some.EmptyReport()));
        HaveRoom(ReportFigures.Flow(report with { Tables = report.Tables with { Unlinked = reasons.Index().ToDictionary(pair => pair.Item, pair => 1_000_000 - pair.Index) } }));
    }

    [Fact]
    public void TextsOfForcesHaveRoom() => HaveRoom(Assert.Single(ReportFigures.Forces(SomeForces.Report(), "P01")));

    [Fact]
    public void AnAxisHasTheSameDecimalsAtAllItsTicks()
    {
        Assert.Equal(["−1.0", "−0.5", "0.0", "0.5"], Sheet.Texts([-1, -0.5, 0, 0.5]));
        Assert.Equal(["90", "95", "100"], Sheet.Texts([90, 95, 100]));
        Assert.Equal(["0.00", "0.02", "0.04"], Sheet.Texts([0, 0.02, 0.04]));
    }

    [Fact]
    public void WordsHaveTheContrastOfWcag()
    {
        // WCAG 2.2, 1.4.3: 4.5 : 1 for text; relative luminance as defined there. All words stand on white or lighter than #EEE.
        var report = SomeStudies.OfPlayers(8);
        var figures = ReportFigures.Changes(report).Concat(ReportFigures.Sessions(report, "P01")).Concat(ReportFigures.Forces(SomeForces.Report(), "P01")).Append(ReportFigures.Flow(report));
        var colours = figures.SelectMany(figure => Regex.Matches(figure.Svg, "<text fill=\"(#[0-9A-Fa-f]{6})\"")).Concat(Regex.Matches(ReportWriter.Study(report), "[{ ]color: (#[0-9a-f]{6})"))
            .Select(match => match.Groups[1].Value).Distinct(StringComparer.OrdinalIgnoreCase).ToList();

        Assert.True(colours.Count > 5);
        Assert.All(colours, colour => Assert.True(1.05 / (Luminance(colour) + 0.05) >= 4.5, colour));
    }

    private static void HaveRoom(params IEnumerable<Figure> figures)
    {
        var faults = figures.SelectMany(figure => TextBox.Faults(figure).Select(fault => $"{figure.Name}: {fault}")).ToList();
        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    private static double Luminance(string colour)
    {
        double[] linear = [.. Convert.FromHexString(colour[1..]).Select(channel => channel / 255.0).Select(value => value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4))];
        return (0.2126 * linear[0]) + (0.7152 * linear[1]) + (0.0722 * linear[2]);
    }
}
