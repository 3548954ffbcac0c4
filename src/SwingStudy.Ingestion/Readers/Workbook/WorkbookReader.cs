using System.Xml;
using ExcelDataReader.Exceptions;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Readers.Workbook;

/// <summary>Opens workbooks (.xlsx, .xls). Sizes are checked before anything is parsed, and all sheets are read once before a row is handed out.</summary>
internal static class WorkbookReader
{
    private const int MostNotices = 20;

    private static ReadOnlySpan<byte> ZipMark => "PK"u8;

    private static ReadOnlySpan<byte> BinaryMark => [0xD0, 0xCF, 0x11, 0xE0];

    /// <summary>The document, or all problems that hold the file. Takes the stream over when it succeeds.</summary>
    public static Outcome<RecordDocument> Open(Stream stream, string file, SourceMapping mapping) =>
        Parse(stream, file).Succeeded(out var workbook, out var problems)
            ? Document(workbook, file, mapping)
            : Outcome<RecordDocument>.Failed(problems);

    /// <summary>The sheets of a workbook, all of them read once.</summary>
    public static Outcome<ParsedWorkbook> Parse(Stream stream, string file)
    {
        var start = new byte[4];
        stream.Position = 0;
        stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false);
        var isZip = start.AsSpan().StartsWith(ZipMark);
        if (!isZip && !start.AsSpan().SequenceEqual(BinaryMark))
            return ReaderMessages.NoWorkbook(file);
        if (stream.Length > ReaderLimits.WorkbookBytes)
            return ReaderMessages.WorkbookBomb(file);
        try
        {
            if (!(isZip ? PackageChecker.Check(stream, file) : WorkbookParts.None).Succeeded(out var parts, out var problems))
                return Outcome<ParsedWorkbook>.Failed(problems);
            var sheets = new Sheets(stream, parts);
            return new ParsedWorkbook(sheets, parts, sheets.Heads());
        }
        catch (InvalidPasswordException)
        {
            return ReaderMessages.WorkbookEncrypted(file);
        }
        catch (Exception e) when (IsDamage(e))
        {
            return ReaderMessages.WorkbookDamaged(file, e.Message);
        }
    }

    /// <summary>
    /// What the parsers of zip, XML and the sheets throw at bytes that are no workbook. The last ones are the parser's own slips over hostile input, and
    /// parts of the old binary format that it does not read; only what its code throws is taken for them, never what ours does.
    /// </summary>
    private static bool IsDamage(Exception e) =>
        e is ExcelReaderException or HeaderException or InvalidDataException or XmlException or IOException or FormatException or OverflowException
        || (e is NotSupportedException or NotImplementedException or ArgumentException or InvalidOperationException or IndexOutOfRangeException
            or NullReferenceException or InvalidCastException or KeyNotFoundException
            && e.TargetSite?.DeclaringType?.Assembly != typeof(WorkbookReader).Assembly);

    private static Outcome<RecordDocument> Document(ParsedWorkbook workbook, string file, SourceMapping mapping)
    {
        var (sheets, parts, heads) = workbook;
        if (!Choose(heads, mapping, file).Succeeded(out var chosen, out var problems))
            return Outcome<RecordDocument>.Failed(problems);
        var (head, layout) = chosen;
        var blocks = new WorkbookBlocks(sheets, head.Index, layout);
        if (!DecimalFinder.Find(blocks, layout.Columns, mapping, file).Succeeded(out var sign, out problems))
            return Outcome<RecordDocument>.Failed(problems);
        return new RecordDocument(blocks, new RecordCounts
        {
            Preamble = layout.HeadingLine - 1,
            Headings = layout.HeadingTexts.Count,
            Units = layout.UnitsText is null ? 0 : 1,
            Lines = layout.FirstLine - 1,
        })
        {
            File = file,
            Decimal = sign.Sign,
            Epoch1904 = parts.Epoch1904,
            Preamble = layout.Preamble,
            Columns = layout.Columns,
            Notices =
            [
                .. HeadingRow.Notices(file, layout.HeadingLine, layout.Columns, layout.Cells),
                .. heads.Where(other => other.Index != head.Index && other.Records.Count > 1).Select(other => ReaderMessages.SheetUnread(file, other.Name, head.Name)),
                .. parts.Faulty.Where(pair => pair.Key.Sheet == head.Name && pair.Value.StartsWith('=')).Take(MostNotices).Select(pair => ReaderMessages.FormulaUnvalued(
                    new Place(file, pair.Key.Row + 1, CellAddress.Letters(pair.Key.Column)), pair.Value)),
            ],
        };
    }

    private static Outcome<ChosenSheet> Choose(IReadOnlyList<SheetHead> heads, SourceMapping mapping, string file)
    {
        if (mapping.Layout.Sheet is { } name)
        {
            return heads.FirstOrDefault(head => string.Equals(head.Name.Trim(), name.Trim(), StringComparison.OrdinalIgnoreCase)) is { } named
                ? Find(named, mapping, file)
                : ReaderMessages.SheetMissing(file, name, heads.Select(head => head.Name));
        }

        var outcomes = heads.Where(head => head.Columns > 0).Select(head => Find(head, mapping, file)).ToList();
        var fitting = outcomes.Where(outcome => outcome.Succeeded(out _)).ToList();
        if (fitting.Count > 1)
            return ReaderMessages.SheetAmbiguous(file, fitting.Select(outcome => outcome.Value!.Head.Name));
        return fitting.Count == 1 ? fitting[0] : outcomes.Count > 0 ? outcomes[0] : ReaderMessages.Empty(file);
    }

    private static Outcome<ChosenSheet> Find(SheetHead head, SourceMapping mapping, string file)
    {
        using var records = new HeadRecords(head.Records);
        if (!HeadingFinder.Find(records, mapping, file).Succeeded(out var layout, out var problems))
            return Outcome<ChosenSheet>.Failed(problems);

        // Cells beside the headings are kept as columns without a name.
        var texts = layout.Cells.Concat(Enumerable.Repeat("", Math.Max(0, head.Columns - layout.Cells.Count))).ToList();
        var columns = mapping.Layout.HeadingRows == 0
            ? HeadingRow.ByPosition(head.Columns)
            : HeadingRow.From(texts, layout.Columns.UnitTexts);
        return new ChosenSheet(head, layout with { Columns = columns, Cells = texts });
    }

    private sealed record ChosenSheet(SheetHead Head, RowLayout Layout);
}
