using System.Text.RegularExpressions;
using Spectre.Console;
using SwingStudy.App.Terminal;

namespace SwingStudy.App.Tests.Terminal;

public class ListingTests
{
    private static readonly string[] Headings = ["variable", "what it is", "swings"];

    private static readonly IReadOnlyList<IReadOnlyList<string>> Rows =
    [
        ["angle_lost_before_grip_peak", "how far the angle between forearm and shaft has opened before the hands are fastest", "12"],
        ["club_head_speed", "speed of the club head before impact", "1234"],
    ];

    [Theory]
    [InlineData(200)]
    [InlineData(160)]
    [InlineData(80)]
    [InlineData(60)]
    [InlineData(45)]
    public void NoLineIsWiderThanTheTerminalAndNoWordIsCut(int width)
    {
        var lines = Listing.Lines(Headings, Rows, width);

        Assert.All(lines, line => Assert.True(line.Length <= width, line));
        var words = Words(string.Join(' ', lines)).Where(word => word.Any(char.IsLetterOrDigit)).ToHashSet();
        Assert.All(Rows.SelectMany(row => row).SelectMany(Words), word => Assert.Contains(word, words));
    }

    [Fact]
    public void WhereColumnsFitTheyStandBelowTheirHeadingsAndNumbersToTheRight() => Assert.Equal(
        [
            "",
            "  player   what        swings",
            "  ──────   ─────────   ──────",
            "  P01      a change        12",
            "  P02      no change     1234",
            "",
        ],
        Listing.Lines(["player", "what", "swings"], [["P01", "a change", "12"], ["P02", "no change", "1234"]], 80));

    [Fact]
    public void WhereColumnsDoNotFitEachRowIsABlock() => Assert.Equal(
        [
            "",
            "  variable     club_head_speed",
            "  moved with   angle_lost_before_grip_peak",
            "               and attention",
            "",
        ],
        Listing.Lines(["variable", "moved with"], [["club_head_speed", "angle_lost_before_grip_peak and attention"]], 45));

    [Fact]
    public void AWordWiderThanTheTerminalIsBrokenRatherThanLost()
    {
        var hash = string.Concat(Enumerable.Repeat("0123456789abcdef", 4));

        Assert.Contains(hash, string.Concat(Listing.Lines(["file", "hash"], [["a", hash]], 40)).Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutRowsItSaysSo()
    {
        var output = new StringWriter();
        Listing.Write(AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(output), Ansi = AnsiSupport.No }), Headings, [], "Nothing yet.");

        Assert.Equal("Nothing yet.\n", output.ToString());
    }

    [Theory]
    [InlineData(0, "0 warnings", "0 aliases")]
    [InlineData(1, "1 warning", "1 alias")]
    [InlineData(2, "2 warnings", "2 aliases")]
    public void OneOfAThingIsNotSaidInThePlural(int count, string warnings, string aliases)
    {
        Assert.Equal(warnings, Counted.Of(count, "warning"));
        Assert.Equal(aliases, Counted.Of(count, "alias", "aliases"));
    }

    private static IEnumerable<string> Words(string text) => Regex.Split(text, "\\s+").Where(word => word.Length > 0);
}
