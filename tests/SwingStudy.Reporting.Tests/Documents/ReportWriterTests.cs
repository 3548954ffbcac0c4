using System.Text.RegularExpressions;
using SwingStudy.Reporting.Documents;
using SwingStudy.Reporting.Tests.Support;

namespace SwingStudy.Reporting.Tests.Documents;

public partial class ReportWriterTests
{
    private static readonly string Page = ReportWriter.Study(Some.Report());

    [Fact]
    public void TheReportIsAsApproved() => Approved.Matches("report.html", WithoutPictures(Page));

    [Fact]
    public void TheReportOfAStudyWithoutDataIsAsApproved() => Approved.Matches("empty-report.html", WithoutPictures(ReportWriter.Study(Some.EmptyReport())));

    [Fact]
    public void NothingIsFetchedAndNothingRuns()
    {
        Assert.DoesNotMatch("(?i)https?://|src=\"(?!data:)|<script|<link|@import|url\\(", Page);
        Assert.DoesNotMatch("(?i) on[a-z]+=", Page);
    }

    [Fact]
    public void ThePageBeginsWithTheAnswerAndItsContentsNameEverySectionInOrder()
    {
        var sections = Regex.Matches(Page, "<section id=\"([a-z]+)\"").Select(match => match.Groups[1].Value).ToList();

        Assert.Equal(["answer", "participants", "changes", "together"], sections.Take(4));
        Assert.Equal(sections, Regex.Matches(Page, "<li><a href=\"#([a-z]+)\">[^<]*</a></li>").Select(match => match.Groups[1].Value));
        foreach (var needed in new[] { "findings", "players", "deviations", "cautions", "limits", "reliability", "accounting", "methods", "numbers", "provenance" })
            Assert.Contains(needed, sections);
    }

    [Fact]
    public void WhatIsFoldedOpensWithoutScriptAndIsOpenOnPaper()
    {
        Assert.Equal(Regex.Count(Page, "<details>"), Regex.Count(Page, "<summary>"));
        Assert.Contains("details::details-content { content-visibility: visible;", Page, StringComparison.Ordinal);
        foreach (var open in new[] { "The answer", "Adverse events", "Deviations from the plan", "What it stands on" })
            Assert.Equal(0, Depth(Page[..Page.IndexOf($">{open}<", Page.IndexOf("</nav>", StringComparison.Ordinal), StringComparison.Ordinal)]));

        static int Depth(string before) => Regex.Count(before, "<details>") - Regex.Count(before, "</details>");
    }

    [Fact]
    public void APlayerWithoutADeviceForTheOutcomeIsNotMeasuredAndNotJudged()
    {
        var page = ReportWriter.Study(SomeStudies.MeasuredInOne());

        Assert.Contains("<p>not measured: P02, P03</p>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("statement on attention", ReportWriter.Player(SomeStudies.MeasuredInOne(), "P02"), StringComparison.Ordinal);
        Assert.Contains("statement on attention", ReportWriter.Player(SomeStudies.MeasuredInOne(), "P01"), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void EveryTableHasHeadersWithTheirScope()
    {
        Assert.All(Regex.Matches(Page, "<th[ >][^>]*>"), header => Assert.Contains("scope=\"", header.Value, StringComparison.Ordinal));
        Assert.All(Regex.Matches(Page, "<table.*?</table>", RegexOptions.Singleline), table => Assert.Contains("<th scope=\"col\"", table.Value, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Study")]
    [InlineData("P01")]
    public void NoUnitIsShownByItsCodeAndNoZeroHasASign(string whose)
    {
        var report = SomeCurves.Report();
        var text = Regex.Replace(WithoutPictures(whose == "Study" ? ReportWriter.Study(report) : ReportWriter.Player(report, whose)), "<style>.*?</style>|<[^>]+>", " ", RegexOptions.Singleline);

        Assert.DoesNotMatch(@"\{[A-Za-z]+\}|\[mi_i\]", text);
        Assert.DoesNotMatch(@"[−-]0(\.0+)?(?![0-9.])", text);
        Assert.DoesNotMatch(@"(?<![0-9A-Za-z])-[0-9]", text);
    }

    [Fact]
    public void EveryPictureHasAnAltTextThatTellsItsMessage()
    {
        var pictures = Regex.Matches(Page, "<img [^>]*>");

        Assert.Equal(6, pictures.Count);
        Assert.All(pictures, picture => Assert.Matches("alt=\"[^\"]{40,}\"", picture.Value));
    }

    [Theory]
    [InlineData("Study")]
    [InlineData("P01")]
    [InlineData("P05")]
    public void ThePageHasOneMainOneFirstHeadingAndNoSkippedLevel(string whose)
    {
        var page = whose == "Study" ? Page : ReportWriter.Player(SomeForces.Report(), whose);
        var levels = Regex.Matches(page, "<h([1-6])").Select(match => match.Groups[1].Value[0] - '0').ToList();

        Assert.Single(Regex.Matches(page, "<main>"));
        Assert.Single(levels, 1);
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 1));
        Assert.Equal(Regex.Count(page, "<table "), Regex.Count(page, "<caption>"));
    }

    [Fact]
    public void LinksWithinThePageLeadSomewhere() => Assert.All(
        Regex.Matches(Page, "href=\"#([a-z]+)\"").Select(match => match.Groups[1].Value), id => Assert.Contains($"id=\"{id}\"", Page, StringComparison.Ordinal));

    [Fact]
    public void TextsOfDataAreEscaped()
    {
        Assert.Contains("Humming &lt;study&gt; (invented)", Page, StringComparison.Ordinal);
        Assert.Contains("statement about P01 &amp; &lt;speed&gt;.", Page, StringComparison.Ordinal);
        Assert.DoesNotContain("<humming>", Page, StringComparison.Ordinal);
    }

    [Fact]
    public void APlayersReportShowsNoOtherPlayer()
    {
        var page = ReportWriter.Player(Some.Report(), "P02");

        Assert.Contains("Statement about P02", page, StringComparison.Ordinal);
        Assert.DoesNotContain(">P02: ", page, StringComparison.Ordinal);
        Assert.DoesNotMatch("P0[1345]", WithoutPictures(page));
        Assert.Throws<ArgumentException>(() => ReportWriter.Player(Some.Report(), "P77"));
    }

    [Fact]
    public void APlayersPageAnswersWhatChangedWhatElseExplainsItAndWhatToDo()
    {
        var page = ReportWriter.Player(Some.Report(), "P02");

        Approved.Matches("player-report.html", WithoutPictures(page));
        string[] questions = ["What changed, and is it real?", "What moved with it", "What else could explain it", "What to do next to be surer", "What the answers rest on"];
        var places = questions.Select(question => page.IndexOf(question, StringComparison.Ordinal)).ToList();
        Assert.True(places.TrueForAll(place => place > 0) && places.SequenceEqual(places.Order()), string.Join(", ", places));
    }

    [Fact]
    public void WhatNobodyPlannedStandsApart()
    {
        var planned = Page.IndexOf("statement about P04", StringComparison.Ordinal);
        var apart = Page.IndexOf("<h2 id=\"exploratory-heading\">Not planned before data</h2>", StringComparison.Ordinal);
        var exploratory = Page.IndexOf("Attention level, baseline to four weeks later <span", apart, StringComparison.Ordinal);
        Assert.True(planned > 0 && planned < apart && apart < exploratory);
        Assert.DoesNotContain("Attention level", Page[Page.IndexOf("id=\"answer\"", StringComparison.Ordinal)..Page.IndexOf("id=\"participants\"", StringComparison.Ordinal)], StringComparison.Ordinal);
    }

    [Fact]
    public void CautionsAndProvenanceAreStated()
    {
        Assert.Contains("not a medical device and gives no diagnosis", Page, StringComparison.Ordinal);
        Assert.Contains(Some.Protocol.Hash.ToString(), Page, StringComparison.Ordinal);
        Assert.Contains("locked 2026-03-01 09:30 UTC", Page, StringComparison.Ordinal);
        Assert.Contains("The lines balance", Page, StringComparison.Ordinal);
    }

    [Fact]
    public void LinesThatDoNotBalanceAreSaidLoudly()
    {
        var report = Some.Report();

        Assert.Contains("THE LINES DO NOT BALANCE", ReportWriter.Study(report with { Intake = report.Intake with { RowsTaken = 1 } }), StringComparison.Ordinal);
    }

    [Fact]
    public void AVerySmallProbabilityIsNeverShownAsZero() => Assert.Contains("&lt; 0.001", Page, StringComparison.Ordinal);

    private static string WithoutPictures(string page) => Pictures().Replace(page, "data:image/png;base64,…");

    [GeneratedRegex("data:image/png;base64,[A-Za-z0-9+/=]+")]
    private static partial Regex Pictures();
}
