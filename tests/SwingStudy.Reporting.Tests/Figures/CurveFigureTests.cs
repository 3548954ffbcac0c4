using SwingStudy.Reporting.Documents;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;
using SwingStudy.Reporting.Tests.Support;

namespace SwingStudy.Reporting.Tests.Figures;

public class CurveFigureTests
{
    private static readonly StudyReport Report = SomeCurves.Report();

    [Theory]
    [InlineData("P01")]
    [InlineData("P02")]
    public void DrawingsAreAsApproved(string player)
    {
        var figure = Assert.Single(ReportFigures.Curves(Report, player));
        Assert.Equal($"curve-total-force-y-with-cue-{player}", figure.Name);
        Approved.Matches($"{figure.Name}.svg", figure.Svg);
    }

    [Fact]
    public void WordsTellWhereInTheSwingAndWhatWasExchanged()
    {
        var figure = Assert.Single(ReportFigures.Curves(Report, "P01"));
        Assert.Equal(
            "Total force y of P01, mean curves of baseline (40 swings, 5 sessions) and cue (40 swings, 5 sessions): higher in cue from 48 % of the downswing to 74 % of the downswing, p = 0.008, exchanging sessions.",
            figure.AltText);
        Assert.Contains("95 % over the whole curve, from session means.", figure.Caption, StringComparison.Ordinal);
        Assert.Contains("2 counted swings without a whole curve left out.", figure.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void WhereSwingsWereExchangedTheFigureSaysThatNothingIsProved()
    {
        var figure = Assert.Single(ReportFigures.Curves(Report, "P02"));
        Assert.Contains("lower in cue from −45 to 30 ms from impact, p < 0.001, exchanging swings", figure.AltText, StringComparison.Ordinal);
        Assert.Contains("they prove no change", figure.Caption, StringComparison.Ordinal);
        Assert.Contains("hold for these sessions only", figure.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutCurvesThereIsNoFigureAndTheTableSaysWhy()
    {
        Assert.Empty(ReportFigures.Curves(Report, "P03"));
        var page = ReportWriter.Player(Report, "P03");
        Assert.Contains("no curve of a swing that counts in baseline", page, StringComparison.Ordinal);
        Assert.Contains("href=\"#curves\"", ReportWriter.Study(Report), StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"curves\"", ReportWriter.Study(Some.Report()), StringComparison.Ordinal);
    }

    [Fact]
    public void APlayersPageShowsThePlayersOwnCurvesOnly()
    {
        var page = ReportWriter.Player(Report, "P01");
        Assert.Contains("Curve tests of P01", page, StringComparison.Ordinal);
        Assert.Contains("<td>48 % of the downswing to 74 % of the downswing</td>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Curve tests of P02", page, StringComparison.Ordinal);
    }
}
