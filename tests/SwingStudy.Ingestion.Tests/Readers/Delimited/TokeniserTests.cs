using CsCheck;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Tests.Readers.Delimited;

public sealed class TokeniserTests
{
    [Fact]
    public void QuotedCellsKeepDelimitersQuotesAndLineBreaks()
    {
        var contents = Some.Read("a,b,c\n1,\"x, y\",\"said \"\"too quick\"\"\"\n2,\"first\nsecond\",z\n3,p,q\n", Some.Mapping("a", "b", "c"));
        Assert.Equal(["1", "x, y", "said \"too quick\""], contents.Rows[0]);
        Assert.Equal(["2", "first\nsecond", "z"], contents.Rows[1]);
        Assert.Equal("2,\"first\nsecond\",z", contents.Raw[1]);
        Assert.Equal([2, 3, 5], contents.Lines);
        Assert.Equal(5, contents.Document.Counts.Lines);
        Assert.Equal(4, contents.Document.Counts.Records);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void LineBreaksOfAllSystemsEndALine(string end)
    {
        var text = string.Join(end, "a;b", "1;2", "", "3;\"x" + end + "y\"", "5;6");
        var contents = Some.Read(text, Some.Mapping("a", "b"));
        Assert.Equal([["1", "2"], ["3", "x" + end + "y"], ["5", "6"]], contents.Rows);
        Assert.Equal([2, 4, 6], contents.Lines);
        Assert.Equal([new SkippedRecord(3, SkipReason.Blank)], contents.Skipped);
        Assert.Equal(6, contents.Document.Counts.Lines);
    }

    /// <summary>Text without quotes against plain splitting, with delimiters and line breaks at each place of a vector.</summary>
    [Fact]
    public void TextWithoutQuotesIsDividedAsSplittingDividesIt()
    {
        const int columns = 7;
        var cell = Gen.String[Gen.OneOf('1', '2', '.', 'x', 'é', 'ÿ', 'ž'), 0, 9];
        var rows = Gen.Select(cell.Array[columns], Gen.OneOf("\n", "\n", "\r\n", "\r")).Array[1, 60];
        Gen.Select(rows, Gen.OneOf(';', '\t', '|', '§', '→')).Sample((written, sign) =>
        {
            var heading = string.Join(sign, Enumerable.Range(0, columns).Select(i => $"c{i}"));
            var text = $"{heading}\n{string.Concat(written.Select(row => string.Join(sign, row.Item1) + row.Item2))}";
            var contents = Some.Read(text, Some.Mapping("c0", "c1") with
            {
                Text = new TextFormat { Delimiter = sign, Encoding = "utf-8", Decimal = '.' },
                Layout = new Layout { UnitsRow = false },
            });
            var expected = written.Select((row, i) => (Cells: row.Item1, Line: i + 2)).Where(row => row.Cells.Any(text => text.Length > 0)).ToList();
            Assert.Equal(expected.Select(row => row.Cells), contents.Rows);
            Assert.Equal(expected.Select(row => row.Line), contents.Lines);
            Assert.Equal(expected.Select(row => string.Join(sign, row.Cells)), contents.Raw);
        }, iter: 1000);
    }

    [Fact]
    public void ARaggedRowIsARejectWithItsRawTextAndCells()
    {
        var contents = Some.Read("a;b;c\n1;2;3\n4;5\n6;7;8;9\n10;11;12", Some.Mapping("a", "b", "c"));
        Assert.Equal([["1", "2", "3"], ["10", "11", "12"]], contents.Rows);
        Assert.Equal(["4;5", "6;7;8;9"], contents.Rejected.Select(reject => reject.Raw));
        Assert.Equal([3, 4], contents.Rejected.Select(reject => reject.Line));
        Assert.Equal(["6", "7", "8", "9"], contents.Rejected[1].Cells);
        Assert.Equal("cell-count", contents.Rejected[0].Problem.Code);
        Assert.Equal(3, contents.Rejected[0].Problem.Place.Row);
    }

    [Fact]
    public void AnOpenQuoteCostsOneLineAndNotTheRest()
    {
        var contents = Some.Read("a;b\n1;2\n3;\"open\n5;6\n7;8\n", Some.Mapping("a", "b"));
        Assert.Equal([["1", "2"], ["5", "6"], ["7", "8"]], contents.Rows);
        var reject = Assert.Single(contents.Rejected);
        Assert.Equal((3, "3;\"open", "quote-unterminated"), (reject.Line, reject.Raw, reject.Problem.Code));
        Assert.Equal(5, contents.Document.Counts.Records);
    }

    [Fact]
    public void AnOpenQuoteThatMeetsALaterOneCostsItsLinesAlone()
    {
        var contents = Some.Read("a;b\n1;\"open\n3;4\n5;\"fine\"\n7;8\n", Some.Mapping("a", "b"));
        Assert.Equal([["3", "4"], ["5", "fine"], ["7", "8"]], contents.Rows);
        Assert.Equal("quote-misplaced", Assert.Single(contents.Rejected).Problem.Code);
    }

    [Fact]
    public void AQuoteInsideACellIsASignLikeAnyOther()
    {
        var contents = Some.Read("a;b\n1;shaft 38\" long\n", Some.Mapping("a", "b"));
        Assert.Equal("shaft 38\" long", contents.Rows[0][1]);
    }

    [Fact]
    public void HeadingsAndUnitsThatStandAgainAreNoRows()
    {
        var contents = Some.Read("a;b\n[s];[mph]\n1;2\na;b\n[s];[mph]\n3;4\n", Some.Mapping("a", "b"));
        Assert.Equal([["1", "2"], ["3", "4"]], contents.Rows);
        Assert.Equal(
            [new SkippedRecord(4, SkipReason.RepeatedHeading), new SkippedRecord(5, SkipReason.RepeatedUnits)],
            contents.Skipped);
    }

    [Fact]
    public void RowsOfDelimitersAloneAreBlank()
    {
        var contents = Some.Read("a;b\n1;2\n;\n  \n3;4\n", Some.Mapping("a", "b"));
        Assert.Equal(2, contents.Rows.Count);
        Assert.Equal([3, 4], contents.Skipped.Select(skipped => skipped.Line));
    }

    [Fact]
    public void RowsThatAllEndWithADelimiterAreWholeRows()
    {
        var contents = Some.Read("a;b\n1;2;\n3;4;\n", Some.Mapping("a", "b"));
        Assert.Equal([["1", "2"], ["3", "4"]], contents.Rows);
    }

    [Fact]
    public void AnEndlessQuoteIsAClearProblemInMemoryThatDoesNotGrowWithTheFile()
    {
        long Allocated(long size)
        {
            using var stream = new GeneratedStream("a;b\n1;2\n3;\"", "all one cell ", size, "");
            var before = GC.GetAllocatedBytesForCurrentThread();
            Assert.True(RecordReaders.Open(stream, "endless.csv", Some.Mapping("a", "b")).Succeeded(out var document));
            var contents = Contents.Of(document);
            Assert.Equal([["1", "2"]], contents.Rows);
            var reject = Assert.Single(contents.Rejected);
            Assert.Equal("record-too-long", reject.Problem.Code);
            Assert.Equal(ReaderLimits.RawCharacters, reject.Raw.Length);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        var small = Allocated(20_000_000);
        Assert.InRange(Allocated(200_000_000), 0, small + 2_000_000);
    }

    [Fact]
    public void AnEndlessQuoteOverManyLinesCostsItsFirstLine()
    {
        using var stream = new GeneratedStream("a;b\n1;2\n3;\"", "x\n4;5\n", 6_000_000, "");
        Assert.True(RecordReaders.Open(stream, "endless.csv", Some.Mapping("a", "b")).Succeeded(out var document));
        var contents = Contents.Of(document);
        Assert.Equal("3;\"x", contents.Rejected[0].Raw);
        Assert.Equal("quote-unterminated", contents.Rejected[0].Problem.Code);
        Assert.Equal(1_000_001, contents.Rows.Count);
        Assert.Equal(document.Counts.Lines, document.Counts.Records);
    }

    [Fact]
    public void AVeryLongLineIsARejectAndTheNextLineGoesOn()
    {
        using var stream = new GeneratedStream("a;b\n1;", "0123456789", 50_000_000, "\n3;4\n");
        Assert.True(RecordReaders.Open(stream, "long.csv", Some.Mapping("a", "b")).Succeeded(out var document));
        var contents = Contents.Of(document);
        Assert.Equal([["3", "4"]], contents.Rows);
        Assert.Equal([3], contents.Lines);
        Assert.Equal("record-too-long", Assert.Single(contents.Rejected).Problem.Code);
    }

    [Fact]
    public void CellsOfBlocksStayReadableWhileLaterBlocksAreRead()
    {
        var text = "a;b\n" + string.Concat(Enumerable.Range(0, 200_000).Select(i => $"{i};\"{i}\"\"\"\n"));
        Assert.True(Some.Open(text, Some.Mapping("a", "b")).Succeeded(out var document));
        using (document)
        {
            var blocks = document.Blocks().ToList();
            Assert.True(blocks.Count > 3);
            var next = 0;
            foreach (var block in blocks)
            {
                for (var row = 0; row < block.RowCount; row++, next++)
                {
                    Assert.Equal($"{next}", block.Cell(row, 0));
                    Assert.Equal($"{next}\"", block.Cell(row, 1));
                    Assert.Equal(next + 2, block.Line(row));
                }

                block.Dispose();
            }

            Assert.Equal(200_000, next);
        }
    }
}
