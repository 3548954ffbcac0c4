using System.Text;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Tests.Readers.Delimited;

public sealed class DetectionTests
{
    private const string Export = "Spieler;Höhe\nZoë;1,5\n";

    static DetectionTests() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    [Theory]
    [InlineData("utf-8", true, "utf-8", "byte order mark")]
    [InlineData("utf-8", false, "utf-8", "strict UTF-8")]
    [InlineData("utf-16", true, "utf-16", "byte order mark")]
    [InlineData("utf-16BE", true, "utf-16BE", "byte order mark")]
    [InlineData("utf-32", true, "utf-32", "byte order mark")]
    [InlineData("utf-32BE", true, "utf-32BE", "byte order mark")]
    [InlineData("utf-16", false, "utf-16", "zero bytes between letters")]
    [InlineData("windows-1252", false, "windows-1252", "fallback, since it is no UTF-8")]
    public void TheEncodingIsFoundAndItsMarkStripped(string written, bool hasMark, string found, string basis)
    {
        var encoding = Encoding.GetEncoding(written);
        byte[] bytes = [.. hasMark ? encoding.GetPreamble() : [], .. encoding.GetBytes(Export)];
        var contents = Some.Read(bytes, Some.Mapping("Spieler", "Höhe"));
        Assert.Equal((found, basis), (contents.Document.Encoding, contents.Document.EncodingBasis));
        Assert.Equal(["Spieler", "Höhe"], contents.Names);
        Assert.Equal(["Zoë", "1,5"], contents.Rows[0]);
    }

    [Fact]
    public void AllCharactersOfWindows1252AreReadAsTheStandardSays()
    {
        // WHATWG Encoding Standard, index windows-1252: 0x80 is the euro sign, 0x85 the ellipsis, 0x99 the trade mark sign, 0x9F Y with diaeresis.
        byte[] bytes = [.. "a;b\n"u8, 0x80, 0x85, 0x99, 0x9F, 0xA0, 0xFF, .. ";1\n"u8];
        Assert.Equal("€…™Ÿ\u00A0ÿ", Some.Read(bytes, Some.Mapping("a", "b")).Rows[0][0]);
    }

    [Fact]
    public void TheLastLineDecidesTheEncodingAsMuchAsTheFirst()
    {
        var text = "a;b\n" + string.Concat(Enumerable.Repeat("plain;1\n", 300_000));
        byte[] bytes = [.. Encoding.ASCII.GetBytes(text), .. "Zo"u8, 0xEB, .. ";2\n"u8];
        var contents = Some.Read(bytes, Some.Mapping("a", "b"));
        Assert.Equal("windows-1252", contents.Document.Encoding);
        Assert.Equal("Zoë", contents.Rows[^1][0]);
    }

    [Fact]
    public void AMultiByteCharacterAcrossABufferBorderIsRead()
    {
        for (var shift = 0; shift < 4; shift++)
        {
            var text = "a;b\n" + new string('x', shift) + string.Concat(Enumerable.Repeat("é€😀;1\n", 150_000));
            var contents = Some.Read(text, Some.Mapping("a", "b"));
            Assert.Equal("utf-8", contents.Document.Encoding);
            Assert.True(contents.Rows.Skip(1).All(row => row[0] == "é€😀"));
        }
    }

    [Fact]
    public void MixedEncodingsHoldTheFileAndNameTheLinesThatDiffer()
    {
        byte[] bytes = [.. "a;b\nplain;1\n"u8, .. "Zoë;2\n"u8, .. "Zo"u8, 0xEB, .. ";3\n"u8, .. "Zo"u8, 0xEB, .. ";4\n"u8];
        var problem = Some.Held(Some.Open(bytes, Some.Mapping("a", "b")), "encoding-mixed");
        Assert.Equal(4, problem.Place.Row);
        Assert.Contains("UTF-8 in line 3 and another encoding in lines 4, 5", problem.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void AMixedFileIsReadAsDeclaredWhenAPersonDecided()
    {
        byte[] bytes = [.. "a;b\n"u8, .. "Zoë;2\n"u8, .. "Zo"u8, 0xEB, .. ";3\n"u8];
        var mapping = Some.Mapping("a", "b") with { Text = new TextFormat { Encoding = "windows-1252" } };
        Assert.Equal("Zoë", Some.Read(bytes, mapping).Rows[1][0]);
    }

    [Fact]
    public void ADeclaredEncodingThatDoesNotFitHoldsTheFileAtItsLine()
    {
        byte[] bytes = [.. "a;b\n1;2\nZo"u8, 0xEB, .. ";3\n"u8];
        var mapping = Some.Mapping("a", "b") with { Text = new TextFormat { Encoding = "utf-8" } };
        Assert.Equal("encoding-misfit", Some.Held(Some.Open(bytes, mapping), "encoding-misfit").Code);
    }

    [Fact]
    public void ByteswithoutCharacterInWindows1252HoldTheFile()
    {
        byte[] bytes = [.. "a;b\n1;2\n"u8, 0x81, .. ";3\n"u8];
        Assert.Equal(3, Some.Held(Some.Open(bytes, Some.Mapping("a", "b")), "encoding-misfit").Place.Row);
    }

    [Theory]
    [InlineData(',')]
    [InlineData(';')]
    [InlineData('\t')]
    [InlineData('|')]
    public void TheDelimiterIsFound(char delimiter)
    {
        var text = "Saltmarsh; the bay, at noon\n\nNo;Name;Value\n1;\"a, b; c|d\te\";2,5\n2;x, y;3,5\n".Replace(';', delimiter);
        if (delimiter == ',')
            text = "Saltmarsh; the bay, at noon\n\nNo,Name,Value\n1,\"a, b; c|d\te\",\"2,5\"\n2,x; y,\"3,5\"\n";
        var contents = Some.Read(text, Some.Mapping("No", "Name", "Value"));
        Assert.Equal(delimiter, contents.Document.Delimiter);
        Assert.Equal(2, contents.Rows.Count);
        Assert.Equal(',', contents.Document.Decimal);
    }

    [Fact]
    public void AllRecordsDecideTheDelimiterWhenTheHeadingsDoNot()
    {
        var text = "When;Speed, mph\n" + string.Concat(Enumerable.Repeat("08:00;93,5\n", 50));
        var mapping = Some.Mapping("When");
        Assert.Equal(';', Some.Read(text, mapping).Document.Delimiter);
    }

    [Fact]
    public void TextOfOneColumnHasNoDelimiter()
    {
        var contents = Some.Read("When\n08:00\n08:01\n", Some.Mapping("When"));
        Assert.Null(contents.Document.Delimiter);
        Assert.Equal([["08:00"], ["08:01"]], contents.Rows);
    }

    [Theory]
    [InlineData("1,5 2,25", ',')]
    [InlineData("1.5 2.25", '.')]
    [InlineData("1.234,5 2", ',')]
    [InlineData("1,234.5 2", '.')]
    [InlineData("1.234.567 2", ',')]
    [InlineData("1.234 0.125", '.')]
    [InlineData("1,234 12,5", ',')]
    [InlineData("12 15", '.')]
    [InlineData("1234.567 2", '.')]
    [InlineData("-,5 2", ',')]
    [InlineData("1.5e3 2", '.')]
    public void TheDecimalSignIsDecidedFromAllNumericCells(string cells, char sign)
    {
        var text = "No;Value\n" + string.Concat(cells.Split(' ').Select((cell, i) => $"{i};{cell}\n"));
        Assert.Equal(sign, Some.Read(text, Some.Mapping("No", "Value")).Document.Decimal);
    }

    [Fact]
    public void TheLastRowDecidesTheDecimalSign()
    {
        var text = "No;Value\n" + string.Concat(Enumerable.Repeat("1;1.234\n", 100_000)) + "2;1.234,5\n";
        Assert.Equal(',', Some.Read(text, Some.Mapping("No", "Value")).Document.Decimal);
    }

    [Theory]
    [InlineData("1.234")]
    [InlineData("1,234")]
    [InlineData("12.345 2 999.000")]
    public void ANumberThatFitsBothReadingsHoldsTheFileWithAQuestion(string cells)
    {
        var text = "No;Value\n" + string.Concat(cells.Split(' ').Select((cell, i) => $"{i};{cell}\n"));
        var problem = Some.Held(Some.Open(text, Some.Mapping("No", "Value")), "decimal-ambiguous");
        Assert.Equal(("Value", 2), (problem.Place.Column, problem.Place.Row));
        Assert.Contains("decimal", problem.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void MixedDecimalSignsHoldTheFileAndNameACellOfEach()
    {
        var problem = Some.Held(Some.Open("No;A;B\n1;1,5;2.5\n2;2,5;3.5\n", Some.Mapping("No", "A", "B")), "decimal-mixed");
        Assert.Contains("'2.5' in column 'B', line 2", problem.Found, StringComparison.Ordinal);
        Assert.Contains("'1,5' in column 'A', line 2", problem.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void AColumnWithADecimalSignOfItsOwnDoesNotDecideForTheFile()
    {
        var mapping = Some.Mapping("No", "A", "B");
        var values = new Dictionary<string, FieldSource>(mapping.Values) { ["value_1"] = new() { Column = "B", Decimal = ',' } };
        Assert.Equal('.', Some.Read("No;A;B\n1;1.5;2,5\n", mapping with { Values = values }).Document.Decimal);
    }

    [Fact]
    public void OneSlipInAThousandCellsDoesNotHoldTheFile()
    {
        var text = "No;A\n" + string.Concat(Enumerable.Repeat("1;1.5\n", 1000)) + "2;2,5\n";
        Assert.Equal('.', Some.Read(text, Some.Mapping("No", "A")).Document.Decimal);
    }

    [Fact]
    public void RemarksAndTokensSayNothingAboutTheDecimalSign()
    {
        var mapping = Some.Mapping("No", "A", "Remark") with { Missing = ["--"] };
        var contents = Some.Read("No;A;Remark\n1;1.5;grip 2,5 up\n2;--;7,5\n3;2.5;thin\n", mapping);
        Assert.Equal('.', contents.Document.Decimal);
    }
}
