using System.IO.Compression;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;
using static SwingStudy.Ingestion.Tests.Readers.Workbook.WorkbookFile;

namespace SwingStudy.Ingestion.Tests.Readers.Workbook;

public sealed class WorkbookReaderTests
{
    private static readonly SourceMapping Mapping = Some.Mapping(ReaderKind.Workbook, "Day", "Speed", "Note");

    [Fact]
    public void TitleGroupsAndHeadingsAreToldFromRows()
    {
        var bytes = new WorkbookFile().Sheet(
            "Sessions",
            Texts("Log of the invented academy"),
            null,
            Texts("Day", "Speed", "Note"),
            [Date("45937"), Number("93.5"), Text("thin")],
            null,
            [Date("45938"), Number("94"), Text(" ")]).Bytes();
        var contents = Some.Read(bytes, Mapping);
        Assert.Equal([["2025-10-07", "93.5", "thin"], ["2025-10-08", "94", " "]], contents.Rows);
        Assert.Equal([4, 6], contents.Lines);
        Assert.Equal([new SkippedRecord(5, SkipReason.Blank)], contents.Skipped);
        Assert.Equal(6, contents.Document.Counts.Records);
        Assert.Equal("Log of the invented academy", contents.Document.Preamble[0].Text);
    }

    [Fact]
    public void ADateIsShownWithItsSerialAndItsKind()
    {
        var contents = Some.Read(new WorkbookFile().Sheet("s", Texts("Day", "Speed"), [Date("45937.25"), Time("0.4622106481481481")]).Bytes(), Mapping);
        Assert.Equal(["2025-10-07 06:00:00", "11:05:35"], contents.Rows[0]);
        Assert.Equal([CellKind.Date, CellKind.Date], contents.Kinds[0]);
        Assert.Equal(45937.25, contents.Numbers[0][0]);
        Assert.Equal(0.46221064814, contents.Numbers[0][1], 8);
    }

    [Fact]
    public void ANumberThatBecameADateInANumericColumnKeepsItsSerial()
    {
        var contents = Some.Read(new WorkbookFile().Sheet("s", Texts("Day", "Speed"), [Number("1"), Number("1.35")], [Number("2"), Date("44562")]).Bytes(), Mapping);
        Assert.Equal([CellKind.Number, CellKind.Date], contents.Kinds.Select(kinds => kinds[1]));
        Assert.Equal(("2022-01-01", 44562.0), (contents.Rows[1][1], contents.Numbers[1][1]));
    }

    [Fact]
    public void TheEpochOfTheWorkbookIsMinded()
    {
        // ECMA-376 part 1, 18.17.4.1: serial 1462 days apart between the two date bases; 44475 of 1904 is 45937 of 1900.
        var contents = Some.Read(new WorkbookFile { Epoch1904 = true }.Sheet("s", Texts("Day", "Speed"), [Date("44475"), Number("1")]).Bytes(), Mapping);
        Assert.True(contents.Document.Epoch1904);
        Assert.Equal(("2025-10-07", 44475.0), (contents.Rows[0][0], contents.Numbers[0][0]));
    }

    [Fact]
    public void AFormulaSavedWithoutItsValueIsAnErrorCellWithANotice()
    {
        var contents = Some.Read(new WorkbookFile().Sheet("s", Texts("Day", "Speed"), [Number("1"), Formula("A2*2", "2")], [Number("2"), Formula("A3*2", null)]).Bytes(), Mapping);
        Assert.Equal([["1", "2"], ["2", "=A3*2"]], contents.Rows);
        Assert.Equal([CellKind.Number, CellKind.Error], contents.Kinds.Select(kinds => kinds[1]));
        var notice = Assert.Single(contents.Document.Notices);
        Assert.Equal(("formula-without-value", 3, "B"), (notice.Code, notice.Place.Row, notice.Place.Column));
    }

    [Fact]
    public void AnErrorOfTheSheetIsAnErrorCell()
    {
        var contents = Some.Read(new WorkbookFile().Sheet("s", Texts("Day", "Speed"), [Number("1"), Error("#DIV/0!")]).Bytes(), Mapping);
        Assert.Equal(("#DIV/0!", CellKind.Error), (contents.Rows[0][1], contents.Kinds[0][1]));
    }

    [Fact]
    public void TheSheetIsTheDeclaredOneOrTheOneWithTheHeadings()
    {
        var file = new WorkbookFile().Sheet("Readme", Texts("hello")).Sheet("Data", Texts("Day", "Speed"), [Number("1"), Number("2")]);
        Assert.Single(Some.Read(file.Bytes(), Mapping).Rows);
        Some.Held(Some.Open(file.Bytes(), Mapping with { Layout = new Layout { Sheet = "Plates" } }), "sheet-missing");
        file.Sheet("More", Texts("Day", "Speed"), [Number("3"), Number("4")]);
        Some.Held(Some.Open(file.Bytes(), Mapping), "sheet-ambiguous");
        Assert.Equal("3", Some.Read(file.Bytes(), Mapping with { Layout = new Layout { Sheet = "more" } }).Rows[0][0]);
    }

    [Fact]
    public void CellsBesideTheHeadingsAreKept()
    {
        var contents = Some.Read(new WorkbookFile().Sheet("s", Texts("Day", "Speed"), [Number("1"), Number("2"), Text("typed beside")]).Bytes(), Mapping);
        Assert.Equal(["Day", "Speed", ""], contents.Names);
        Assert.Equal("typed beside", contents.Rows[0][2]);
    }

    [Fact]
    public void TwoHeadingRowsOfMergedCellsAreJoined()
    {
        var mapping = Some.Mapping(ReaderKind.Workbook, "Session day", "Club speed") with { Layout = new Layout { HeadingRows = 2 } };
        var bytes = new WorkbookFile().Sheet("s", Texts("Title"), [Text("Session"), Text(""), Text("Club")], Texts("day", "time", "speed"), [Date("45937"), Time("0.5"), Number("90")]).Bytes();
        Assert.Equal(["Session day", "Session time", "Club speed"], Some.Read(bytes, mapping).Names);
    }

    [Fact]
    public void NumbersTypedAsTextTellTheirDecimalSign() =>
        Assert.Equal(',', Some.Read(new WorkbookFile().Sheet("s", Texts("Day", "Speed"), [Number("1"), Text("93,5")]).Bytes(), Mapping).Document.Decimal);

    [Fact]
    public void WhatIsNoWorkbookIsHeld()
    {
        Some.Held(Some.Open([], Mapping), "file-empty");
        Some.Held(Some.Open("Day;Speed\n1;2\n", Mapping), "workbook-unreadable");
        Some.Held(Some.Open(Zip("other.txt", "Day;Speed\n1;2\n"), Mapping), "workbook-unreadable");
        Some.Held(Some.Open(Zip("[Content_Types].xml", "<Types/>"), Mapping), "workbook-unreadable");
        Some.Held(Some.Open(Zip("other.txt", ""), Mapping), "file-empty");

        static byte[] Zip(string part, string text)
        {
            using var stream = new MemoryStream();
            using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
            using (var writer = new StreamWriter(zip.CreateEntry(part).Open()))
                writer.Write(text);
            return stream.ToArray();
        }
    }

    [Fact]
    public void ATruncatedWorkbookIsHeld()
    {
        var bytes = new WorkbookFile().Sheet("s", Texts("Day", "Speed"), [Number("1"), Number("2")]).Bytes();
        for (var length = 2; length < bytes.Length; length += 37)
            Assert.False(Some.Open(bytes[..length], Mapping).Succeeded(out _));
    }

    [Fact]
    public void AWorkbookThatUnpacksWithoutEndIsHeldBeforeItIsParsed()
    {
        using var stream = new MemoryStream();
        stream.Write(new WorkbookFile().Sheet("s", Texts("Day", "Speed"), [Number("1"), Number("2")]).Bytes());
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
        {
            using var part = zip.CreateEntry("xl/media/zeros.bin").Open();
            part.Write(new byte[50_000_000]);
        }

        Assert.InRange(stream.Length, 0, 200_000);
        Some.Held(Some.Open(stream.ToArray(), Mapping), "workbook-too-large");
    }
}
