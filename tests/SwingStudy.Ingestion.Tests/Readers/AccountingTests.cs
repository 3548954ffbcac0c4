using System.Text;
using CsCheck;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Tests.Readers.Workbook;

namespace SwingStudy.Ingestion.Tests.Readers;

/// <summary>Whatever a file holds, no exception escapes and no line is lost.</summary>
public sealed class AccountingTests
{
    private static readonly byte[] Export = Encoding.UTF8.GetBytes(
        "Saltmarsh;bay 2\nTemperature 18,6 °C\nNo;Player;Speed;Remark\n;;[mph];\n1;Twig;93,5;\"said \"\"too quick\"\";\nagain\"\n2;Zoë;94,1;\n\nNo;Player;Speed;Remark\n3;Twig;95,25;good\nAverage;;94,3;\n");

    private static readonly byte[] Lines = "{\"No\":1,\"Speed\":93.5,\"a\":{\"b\":\"x\"}}\n\n{\"No\":2,\"Speed\":\"94\",\"a\":[1,2]}\n{\"No\":3"u8.ToArray();

    private static readonly byte[] Array = "[{\"No\":1,\"Speed\":93.5,\"a\":{\"b\":\"x\"}},{\"No\":2,\"Speed\":\"94\",\"a\":[1,2]}]"u8.ToArray();

    private static readonly byte[] Workbook = new WorkbookFile()
        .Sheet("s", WorkbookFile.Texts("No", "Speed"), [WorkbookFile.Number("1"), WorkbookFile.Date("45937")], null, [WorkbookFile.Number("2"), WorkbookFile.Error("#N/A")])
        .Bytes();

    private static readonly Gen<SourceMapping> Mappings =
        from columns in Gen.OneOf([["No", "Speed"], ["No", "Speed", "Remark"], ["#1", "#2"], (string[])["No"]])
        from rows in Gen.Int[0, 2]
        from preamble in Gen.OneOf<int?>(null, null, 0, 2, 9)
        from delimiter in Gen.OneOf<char?>(null, null, ';', ',')
        from encoding in Gen.OneOf<string?>(null, null, "utf-8", "windows-1252", "utf-16", "shift_jis", "no-such")
        from reader in Gen.OneOf(ReaderKind.Delimited, ReaderKind.Delimited, ReaderKind.Ndjson, ReaderKind.Json, ReaderKind.Workbook)
        from sign in Gen.OneOf<char?>(null, ',')
        select Some.Mapping(reader, columns) with
        {
            Layout = new Layout { HeadingRows = rows, PreambleRows = preamble },
            Text = new TextFormat { Delimiter = delimiter, Encoding = encoding, Decimal = sign },
        };

    private static readonly Gen<byte[]> Mutated =
        from start in Gen.OneOf(Export, Lines, Array, Workbook)
        from edits in Gen.Select(Gen.Int[0, 10_000], Gen.Int[0, 3], Gen.OneOf(Gen.Byte, Gen.OneOf("\";,\r\n\t{}[]0"u8.ToArray()))).Array[0, 12]
        select Edit(start, edits);

    [Fact]
    public void MutatedFilesNeverThrowAndBalance() =>
        Gen.Select(Mutated, Mappings).Sample((bytes, mapping) => Balances(bytes, mapping), iter: 4000);

    [Fact]
    public void RandomBytesNeverThrowAndBalance() =>
        Gen.Select(Gen.Byte.Array[0, 400], Mappings).Sample((bytes, mapping) => Balances(bytes, mapping), iter: 3000);

    [Fact]
    public void RandomTextNeverThrowsAndBalances()
    {
        var text = Gen.OneOf("No", "Speed", ";", ";", ";", ",", "\"", "\"\"", "\n", "\n", "\r\n", "\r", " ", "1", "2,5", "3.5", "é").Array[0, 80];
        Gen.Select(text, Mappings).Sample((parts, mapping) => Balances(Encoding.UTF8.GetBytes("No;Speed\n" + string.Concat(parts)), mapping), iter: 6000);
    }

    /// <summary>Writes cells by RFC 4180 and reads the same cells back.</summary>
    [Fact]
    public void WhatIsWrittenByTheStandardIsReadBack()
    {
        var cell = Gen.OneOf("", "a", "x;y", "say \"so\"", "two\nlines", "cr\rlf\r\n", " blank ", "é", "1,5", "\"", ";");
        Gen.Select(Gen.Select(cell, cell, cell).List[0, 40], Gen.OneOf("\n", "\r\n", "\r"), Gen.OneOf(';', ',', '\t', '|')).Sample((rows, end, delimiter) =>
        {
            string Write(string text) => text.IndexOfAny(['"', '\r', '\n', delimiter]) < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
            var kept = rows.Where(row => !IsBlank(row)).ToList();
            var text = string.Join(delimiter, "No", "Speed", "Remark") + end
                + string.Concat(kept.Select(row => string.Join(delimiter, Write(row.Item1), Write(row.Item2), Write(row.Item3)) + end));
            var mapping = Some.Mapping("No", "Speed", "Remark") with { Text = new TextFormat { Decimal = '.' }, Layout = new Layout { UnitsRow = false } };
            var contents = Some.Read(text, mapping);
            Assert.Equal(kept.Select(row => new[] { row.Item1, row.Item2, row.Item3 }), contents.Rows);
            Assert.Empty(contents.Rejected);
        });

        static bool IsBlank((string, string, string) row) =>
            row.Item1.Trim().Length + row.Item2.Trim().Length + row.Item3.Trim().Length == 0;
    }

    private static void Balances(byte[] bytes, SourceMapping mapping)
    {
        var outcome = Some.Open(bytes, mapping);
        if (!outcome.Succeeded(out var document))
        {
            Assert.All(outcome.Problems, problem => Assert.True(problem.Found.Length > 0 && problem.Expected.Length > 0 && problem.Mend.Length > 0));
            return;
        }

        var contents = Contents.Of(document);
        var counts = document.Counts;
        Assert.Equal(contents.Rows.Count, counts.Rows);
        Assert.Equal(contents.Rejected.Count, counts.Rejected);
        var first = counts.Preamble + counts.Headings + counts.Units;
        List<int> starts = [.. contents.Lines, .. contents.Rejected.Select(reject => reject.Line), .. contents.Skipped.Select(skipped => skipped.Line)];
        starts.Sort();
        Assert.Equal(starts.Count, starts.Distinct().Count());
        Assert.True(starts.Count == 0 || (starts[0] >= first && starts[^1] <= counts.Lines));
        Assert.Equal(first + starts.Count, counts.Records);
        if (mapping.Reader is ReaderKind.Json or ReaderKind.Workbook)
        {
            Assert.Equal(counts.Lines, counts.Records);
            return;
        }

        // Each physical line starts one record, or stands inside the quotes of one: the text of the records gives all lines back.
        var inHead = document.HeadLines - counts.Preamble - counts.Headings - counts.Units;
        var inRows = contents.Raw.Sum(Breaks);
        var inSkipped = counts.Lines - counts.Records - inHead - inRows - contents.Rejected.Sum(reject => Breaks(reject.Raw));
        Assert.True(contents.Skipped.Count == 0 ? inSkipped == 0 : inSkipped >= 0, $"{inSkipped} lines belong to no record");
    }

    private static int Breaks(string text) => text.Replace("\r\n", "\n", StringComparison.Ordinal).Count(sign => sign is '\n' or '\r');

    private static byte[] Edit(byte[] start, (int Place, int Kind, byte Value)[] edits)
    {
        List<byte> bytes = [.. start];
        foreach (var (place, kind, value) in edits)
        {
            var at = bytes.Count == 0 ? 0 : place % bytes.Count;
            if (kind == 0 || bytes.Count == 0)
                bytes.Insert(at, value);
            else if (kind == 1)
                bytes.RemoveAt(at);
            else if (kind == 2)
                bytes[at] = value;
            else
                bytes.RemoveRange(at, Math.Min(bytes.Count - at, value));
        }

        return [.. bytes];
    }
}
