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
            "Vertical force, both feet of P01, mean curves of baseline (40 swings, 5 sessions) and cue (40 swings, 5 sessions): higher in cue from 48 % of the downswing to 74 % of the downswing, p = 0.008, exchanging sessions.",
            figure.AltText);
        Assert.Contains(
            "Band of baseline and cue: where the mean of the phase lies with 95 % confidence, over the whole curve at once, from its 5 and 5 session means.", figure.Caption, StringComparison.Ordinal);
        Assert.DoesNotContain("is cut", figure.Caption, StringComparison.Ordinal);
        Assert.Contains("2 counted swings without a whole curve left out.", figure.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void WhereSwingsWereExchangedTheFigureSaysThatNothingIsProved()
    {
        var figure = Assert.Single(ReportFigures.Curves(Report, "P02"));
        Assert.Contains("lower in cue from −45 to 30 ms from impact, p < 0.001, exchanging swings", figure.AltText, StringComparison.Ordinal);
        Assert.Contains("they prove no change", figure.Caption, StringComparison.Ordinal);
        Assert.Contains("at each point taken by itself, from its 12 and 12 swings, since sessions are too few, so that it holds for these sessions only", figure.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void ABandFarWiderThanTheCurvesIsCutAtTheFieldAndTheCaptionSaysSo()
    {
        // The curves of P01 lie between 0.9 and 1.8; a band of ±50 around one of them must neither flatten them nor be painted beyond the field.
        var wide = Report with
        {
            Tables = Report.Tables with
            {
                CurveMeans = [.. Report.Tables.CurveMeans.Select(row => row.Phase == "cue" ? row with { Low = [.. row.Mean.Select(value => value - 50)], High = [.. row.Mean.Select(value => value + 50)] } : row)],
            },
        };
        var figure = Assert.Single(ReportFigures.Curves(wide, "P01"));

        Assert.Contains("A band that leaves the picture is cut at its edge.", figure.Caption, StringComparison.Ordinal);
        foreach (var tick in new[] { "1.0", "1.5", "2.0" })
            Assert.Contains($"\t{tick}\n", figure.Svg, StringComparison.Ordinal);
        Assert.DoesNotContain("\t40\n", figure.Svg, StringComparison.Ordinal);
    }

    [Fact]
    public void PhasesWithBandsOfDifferentKindsAreToldApart()
    {
        var mixed = Report with
        {
            Tables = Report.Tables with { CurveMeans = [.. Report.Tables.CurveMeans.Select(row => row is { Participant: "P01", Phase: "cue" } ? row with { IsSimultaneous = false, Sessions = 3 } : row)] },
        };
        var caption = Assert.Single(ReportFigures.Curves(mixed, "P01")).Caption;

        Assert.Contains("Band of baseline: where the mean of the phase lies with 95 % confidence, over the whole curve at once, from its 5 session means.", caption, StringComparison.Ordinal);
        Assert.Contains("Band of cue: where the mean of the phase lies with 95 % confidence, at each point taken by itself, from its 3 session means.", caption, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutCurvesThereIsNoFigureAndTheTableSaysWhy()
    {
        Assert.Empty(ReportFigures.Curves(Report, "P03"));
        var page = ReportWriter.Player(Report, "P03");
        Assert.Contains("no curve of a swing that counts in baseline", page, StringComparison.Ordinal);
        Assert.Contains("Each test of curves is over the whole curve", ReportWriter.Study(Report), StringComparison.Ordinal);
        Assert.DoesNotContain("Each test of curves", ReportWriter.Study(Some.Report()), StringComparison.Ordinal);
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
