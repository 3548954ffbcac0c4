using System.Text.RegularExpressions;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;
using SwingStudy.Reporting.Tests.Support;

namespace SwingStudy.Reporting.Tests.Figures;

public class FigureTests
{
    private static readonly StudyReport Report = Some.Report();

    public static TheoryData<string> Names => [.. All(Report).Select(figure => figure.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void DrawingsAreAsApproved(string name) => Approved.Matches($"{name}.svg", All(Report).Single(figure => figure.Name == name).Svg);

    [Fact]
    public void TheSameReportGivesTheSameBytes()
    {
        var (first, second) = (All(Report), All(Some.Report()));

        Assert.All(first.Zip(second), pair =>
        {
            Assert.Equal(pair.First.Svg, pair.Second.Svg);
            Assert.Equal(pair.First.Png, pair.Second.Png);
        });
    }

    [Fact]
    public void TextIsDrawnWithTheShippedFont()
    {
        Assert.All(All(Report), figure => Assert.Contains("font-family=\"DejaVu Sans\"", figure.Svg, StringComparison.Ordinal));
        Assert.All(All(Report), figure => Assert.DoesNotMatch("font-family=\"(?!DejaVu Sans\")", figure.Svg));
    }

    [Fact]
    public void APictureIsTwiceAsSharpAsItsSize() => Assert.All(All(Report), figure =>
    {
        // PNG: width and height are big-endian at byte 16 (W3C Portable Network Graphics, 11.2.2 IHDR).
        Assert.Equal(2 * figure.Width, System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(figure.Png.AsSpan(16)));
        Assert.Equal(2 * figure.Height, System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(figure.Png.AsSpan(20)));
    });

    [Fact]
    public void AltTextTellsTheMessageInDisplayUnits()
    {
        var change = Assert.Single(ReportFigures.Changes(Report));
        var sessions = Assert.Single(ReportFigures.Sessions(Report, "P01"));

        // 2.1 m/s = 4.6975 mph, 0.1 m/s = 0.2237 mph (1 mph = 0.44704 m/s by definition).
        Assert.Contains("P01 +4.7 mph (3.1 to 6.3), supported", change.AltText, StringComparison.Ordinal);
        Assert.Contains("P03 +0.2 mph (−1.1 to 1.6), not shown", change.AltText, StringComparison.Ordinal);
        Assert.Contains("P05 no estimate", change.AltText, StringComparison.Ordinal);
        Assert.Contains("baseline, 3 sessions", sessions.AltText, StringComparison.Ordinal);
        Assert.Contains("70 counted swings, 2 excluded.", sessions.AltText, StringComparison.Ordinal);
    }

    [Fact]
    public void ValuesExcludedByAFlagAndSwingsNotIncludedDoNotCount()
    {
        var swings = Report.Tables.Swings["club_head_speed"].Where(swing => swing.Participant == "P01").ToList();

        Assert.Equal(["P01-1-4", "P01-5-3"], swings.Where(swing => !swing.Counts).Select(swing => swing.SwingId));
        Assert.DoesNotContain(swings, swing => swing.SwingId.EndsWith("-0", StringComparison.Ordinal));
    }

    [Fact]
    public void ADecisionOverrulesARule() =>
        Assert.True(Report.Tables.Swings["club_head_speed"].Single(swing => swing.SwingId == "P03-2-5").Counts);

    [Fact]
    public void TheFlowBalancesAtEachStep()
    {
        var steps = FlowFigure.StepsOf(Report);

        Assert.Equal(["Lines read", "Rows taken", "Captures in a swing", "Swings", "Swings counted"], steps.Select(step => step.Word));
        Assert.Equal(steps[0].Count, steps[1].Count + steps[0].Leaving.Sum(loss => loss.Count));
        Assert.Equal(steps[1].Count, steps[2].Count + steps[1].Leaving.Sum(loss => loss.Count));
        Assert.Equal(steps[3].Count, steps[4].Count + steps[3].Leaving.Sum(loss => loss.Count));
    }

    [Fact]
    public void WithoutRowsThereIsNoFigureOfChangesOrSessions()
    {
        Assert.Empty(ReportFigures.Changes(Some.EmptyReport()));
        Assert.Empty(ReportFigures.Sessions(Some.EmptyReport(), "P01"));
    }

    [Fact]
    public void IdentifiersOfADrawingAreNumberedFromOneAndAllReferencesHold()
    {
        Assert.All(All(Report), figure =>
        {
            var ids = Regex.Matches(figure.Svg, "\\bid=\"([^\"]+)\"").Select(match => match.Groups[1].Value).ToList();
            Assert.Equal(Enumerable.Range(1, ids.Count).Select(i => $"c{i}"), ids);
            Assert.All(Regex.Matches(figure.Svg, "url\\(#([^)]+)\\)").Select(match => match.Groups[1].Value), id => Assert.Contains(id, ids));
        });
    }

    private static List<Figure> All(StudyReport report) =>
        [ReportFigures.Flow(report), .. ReportFigures.Changes(report), .. ReportFigures.Sessions(report, "P01"), .. ReportFigures.Sessions(report, "P03")];
}
