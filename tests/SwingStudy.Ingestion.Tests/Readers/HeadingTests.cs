using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Tests.Readers;

public sealed class HeadingTests
{
    [Fact]
    public void TheHeadingsAreFoundBelowThePreambleWhichIsKept()
    {
        var contents = Some.Read("Academy of the marsh;bay 2\n\nTemperature 18,6 °C\nNo;Speed\n1;93,5\n", Some.Mapping("No", "Speed"));
        Assert.Equal(["Academy of the marsh;bay 2", "", "Temperature 18,6 °C"], contents.Document.Preamble.Select(line => line.Text));
        Assert.Equal([5], contents.Lines);
        Assert.Equal((3, 1), (contents.Document.Counts.Preamble, contents.Document.Counts.Headings));
    }

    [Fact]
    public void AStrayQuoteInThePreambleDoesNotHideTheHeadings()
    {
        var contents = Some.Read("\"Morning group;bay 2\nNo;Speed\n1;93,5\n", Some.Mapping("No", "Speed"));
        Assert.Equal("\"Morning group;bay 2", Assert.Single(contents.Document.Preamble).Text);
        Assert.Equal([["1", "93,5"]], contents.Rows);
    }

    [Fact]
    public void DeclaredPreambleLinesAreCountedAsLines()
    {
        var mapping = Some.Mapping("No", "Speed") with { Layout = new Layout { PreambleRows = 2 } };
        Assert.Equal(["4", "5"], Some.Read("No;Speed\n1;2\nNo;Speed\n4;5\n", mapping).Rows[0]);
    }

    [Fact]
    public void InvisibleCharactersAreStrippedFromHeadingsAndRecorded()
    {
        var contents = Some.Read("\uFEFF\uFEFFNo;\u00A0Club\u00A0speed\u200B;Carry\n1;93.5;170\n", Some.Mapping("No", "Club speed", "Carry"));
        Assert.Equal(["No", "Club speed", "Carry"], contents.Names);
        Assert.Equal(["No", "Club speed"], contents.Document.Notices.Where(notice => notice.Code == "heading-cleaned").Select(notice => notice.Place.Column));
        Assert.Contains("\\u200B", contents.Document.Notices[1].Found, StringComparison.Ordinal);
    }

    [Fact]
    public void RepeatedHeadingsKeepTheirPlaceAndAreAddressedByNumber()
    {
        var contents = Some.Read("No,Angle (deg),Angle (deg),Angle (deg)\n1,2,3,4\n", Some.Mapping("No", "Angle (deg)", "Angle (deg)#3"));
        Assert.Equal(["No", "Angle (deg)", "Angle (deg)#2", "Angle (deg)#3"], contents.Names);
        Assert.Equal(2, contents.Document.Columns.Find("angle (deg)#2")!.Position);
        Assert.Equal(3, contents.Document.Columns.Find("Angle#3")!.Position);
        Assert.Equal(2, contents.Document.Notices.Count(notice => notice.Code == "heading-repeated"));
    }

    [Fact]
    public void ANumberedNameNeverCollidesWithAHeadingThatReallyIsCalledSo()
    {
        var contents = Some.Read("No,x,x#2,x\n1,2,3,4\n", Some.Mapping("No", "x"));
        Assert.Equal(["No", "x", "x#2", "x#3"], contents.Names);
    }

    [Fact]
    public void AUnitInBracketsBelongsToTheHeadingOfEachFile()
    {
        foreach (var unit in (string[])["mph", "m/s"])
        {
            var column = Some.Read($"No,Club speed ({unit})\n1,93.5\n", Some.Mapping("No", "Club speed")).Document.Columns.Find("club speed")!;
            Assert.Equal(($"Club speed ({unit})", unit), (column.Name, column.Unit));
        }
    }

    [Fact]
    public void AUnitsRowIsRecognisedAndItsUnitsGoToTheColumns()
    {
        var contents = Some.Read("No;Player;Speed;Angle;Ratio;Note\n;;[mph];[°];[-];\n1;P;93,5;2,5;1,4;\n", Some.Mapping("No", "Speed", "Angle"));
        Assert.Equal(["mph", "°", "-"], contents.Document.Columns.Headings.Select(heading => heading.Unit).OfType<string>());
        Assert.Equal(1, contents.Document.Counts.Units);
        Assert.Single(contents.Rows);
    }

    [Fact]
    public void ARowOfDataIsNoUnitsRow()
    {
        Assert.Equal(2, Some.Read("No;Player;Speed\n1;m;5\n2;s;6\n", Some.Mapping("No", "Player", "Speed")).Rows.Count);
        Assert.Equal(2, Some.Read("Name;Club;Note\nTwig;iron;-\nZoe;iron;s\n", Some.Mapping("Name", "Club")).Rows.Count);
    }

    [Fact]
    public void MergedGroupHeadingsFillForwardOverTheirColumns()
    {
        var mapping = Some.Mapping("No", "Club speed", "Ball spin") with { Layout = new Layout { HeadingRows = 2 } };
        var contents = Some.Read("Export of the bay\n;Club;;Ball;\nNo;speed;path;speed;spin\n;mph;deg;mph;rpm\n1;93,5;1,5;130,5;6000\n", mapping);
        Assert.Equal(["No", "Club speed", "Club path", "Ball speed", "Ball spin"], contents.Names);
        Assert.Equal("rpm", contents.Document.Columns.Find("Ball spin")!.Unit);
        Assert.Equal([["1", "93,5", "1,5", "130,5", "6000"]], contents.Rows);
        Assert.Equal((1, 2, 1), (contents.Document.Counts.Preamble, contents.Document.Counts.Headings, contents.Document.Counts.Units));
    }

    [Fact]
    public void TextWithoutHeadingsIsAddressedByPosition()
    {
        var mapping = Some.Mapping("#1", "#2") with { Layout = new Layout { HeadingRows = 0 } };
        var contents = Some.Read("1;93,5\n2;94,5\n", mapping);
        Assert.Equal(["#1", "#2"], contents.Names);
        Assert.Equal(2, contents.Rows.Count);
    }

    [Fact]
    public void AFileWithoutTheMappedHeadingsIsHeldWithTheirNames()
    {
        var problem = Some.Held(Some.Open("x;y\n1;2\n", Some.Mapping("No", "Speed", "Carry")), "headings-missing");
        Assert.Contains("'No', 'Speed', 'Carry'", problem.Expected, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n \n")]
    [InlineData("\uFEFF")]
    public void AnEmptyFileIsHeld(string text) => Some.Held(Some.Open(text, Some.Mapping("No", "Speed")), "file-empty");

    [Fact]
    public void AFolderAndAMissingFileAreHeld()
    {
        Some.Held(RecordReaders.Open(Path.GetTempPath(), Some.Mapping("No")), "file-is-folder");
        Some.Held(RecordReaders.Open("/no/such/file.csv", Some.Mapping("No")), "file-not-readable");
    }

    [Fact]
    public void RecordsBelowTheHeadingsAreNotRead()
    {
        var read = 0;
        using var records = new HeadRecords(Enumerable.Range(1, 1000).Select(line =>
        {
            read = line;
            string[] cells = line == 3 ? ["When", "Speed"] : line > 3 ? ["2026-01-01", "4"] : ["remark"];
            return new HeadRecord(line, line + 1, string.Join(';', cells), cells);
        }));
        Assert.True(HeadingFinder.Find(records, Some.Mapping("When", "Speed"), "export.csv").Succeeded(out var layout, out _));
        Assert.Equal((3, 4, 2), (layout.HeadingLine, layout.FirstLine, layout.Preamble.Count));
        Assert.Equal(4, read);
    }
}
