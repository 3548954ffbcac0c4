using System.Globalization;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers;

/// <summary>All that the readers say about files.</summary>
internal static class ReaderMessages
{
    private const int ShownLines = 5;

    public static Problem IsFolder(string file) =>
        new("file-is-folder", new(file), "a folder", "a file", "Name the file inside it.");

    public static Problem NotReadable(string file, string reason) =>
        new("file-not-readable", new(file), $"a file that does not open: {reason.TrimEnd('.')}", "a file that can be read", "Check its name, its place and the rights to it.");

    public static Problem NotRows(string file) =>
        new("file-not-rows", new(file), "a binary file of recordings", "a file with rows of text", "Read its curves from the tables instead.");

    public static Problem Empty(string file) =>
        new("file-empty", new(file), "no text at all", "headings and rows", "Export it again: the export was cut off or has nothing in it.");

    public static Problem Binary(string file) =>
        new("file-binary", new(file), "zero bytes, which text does not hold", "delimited text", "Check 'reader' of the mapping, or export the file again as text.");

    /// <summary>What a file of another format is, by its first bytes, and what to do with it; null for all others.</summary>
    public static Problem? OtherFormat(ReadOnlySpan<byte> start, string file) =>
        IsCompressed(start)
            ? new("file-compressed", new(file), "a compressed file", "the file inside it", "Unpack it and take in what is inside: the original that is kept is then the export itself.")
            : start.StartsWith("%PDF"u8)
                ? new("file-printed", new(file), "a PDF", "an export of the numbers", "Export the numbers from the device as text, workbook or JSON: a page for printing holds no rows.")
                : null;

    public static Problem UnpacksWrong(string file, string why) => new("file-unpacks-wrong", new(file), $"a packed file that does not unpack: {why}", "a whole file",
        "Pack or copy it again; a transfer that was cut short leaves such files.");

    public static Problem UnpacksTooLarge(string file) => new("file-unpacks-wrong", new(file), "a packed file that unpacks to far more than an export", "an export",
        FormattableString.Invariant($"Unpack it yourself and look at it: at most {ReaderLimits.UnpackedBytes >> 30} GiB, and {ReaderLimits.UnpackedRatio} times its packed size, are unpacked."));

    public static Problem SeveralPacked(string file, int count) => new("file-compressed", new(file), count == 0 ? "a zip without a file" : FormattableString.Invariant($"a zip with {count} files"), "one file in a zip",
        "Unpack it and take in what is inside, each file by itself.");

    /// <summary>First bytes of bzip2, xz, Zstandard (RFC 8878), RAR and 7z, which are not unpacked.</summary>
    private static bool IsCompressed(ReadOnlySpan<byte> start) =>
        start is [(byte)'B', (byte)'Z', (byte)'h', >= (byte)'1' and <= (byte)'9'] or [0xFD, 0x37, 0x7A, 0x58] or [0x28, 0xB5, 0x2F, 0xFD] or [0x37, 0x7A, 0xBC, 0xAF]
        || start.SequenceEqual("Rar!"u8);

    public static Problem SheetUnread(string file, string name, string read) =>
        new("sheet-unread", new(file), $"rows on the sheet '{name}', of which nothing is taken: only '{read}' is read", "one sheet with all rows", $"Nothing to do when it holds no data of its own; else save '{name}' as a workbook of its own.");

    public static Problem FixedWidth(string file, int line) =>
        new("columns-by-width", new(file, line), "columns that only blanks part", "one sign between cells", "Export it with commas, semicolons or tabs: columns of fixed width are not read.");

    public static Problem JsonColumnsOfValues(string file) =>
        new("json-columns", new(file), "arrays of values side by side, one for each column", "one object for each record", "Export records, or turn the columns into rows before taking the file in.");

    public static Problem EncodingUnknown(string file, string declared) =>
        new("encoding-unknown", new(file), $"the declared encoding '{declared}', which nobody knows", "an IANA name such as utf-8 or windows-1252", "Mend 'encoding' of the mapping.");

    public static Problem EncodingContradicted(string file, string declared, string mark) =>
        new("encoding-contradicted", new(file), $"the byte order mark of {mark}", $"the declared encoding {declared}", "Take 'encoding' out of the mapping: the mark is enough.");

    public static Problem EncodingMisfit(string file, int line, string encoding, string basis, byte[] bytes) =>
        new(
            "encoding-misfit",
            new(file, line),
            bytes.Length == 0 ? $"bytes that {encoding} ({basis}) has no character for" : $"the bytes {Convert.ToHexString(bytes)}, which {encoding} ({basis}) has no character for",
            $"text in {encoding}",
            "Declare the right 'encoding' in the mapping, or export the file again.");

    public static Problem EncodingMixed(string file, IReadOnlyList<int> utf8, IReadOnlyList<int> other) =>
        new(
            "encoding-mixed",
            new(file, other[0]),
            $"UTF-8 in {Lines(utf8)} and another encoding in {Lines(other)}",
            "one encoding",
            "Save the file in one encoding, or declare 'encoding: windows-1252' in the mapping to read all of it so.");

    public static Problem HeadingBelowEnd(string file, int line) =>
        new("headings-missing", new(file, line), "the end of the file", "headings behind the declared preamble", "Mend 'preamble_rows' of the mapping, or export the file again.");

    public static Problem HeadingsMissing(string file, IReadOnlyList<string> wanted, int? nearest, HeadingRow? row)
    {
        var missing = wanted.Where(name => row?.Find(name) is null).Select(name => $"'{name}'").Take(ShownLines);
        var found = nearest is null ? "none of the mapped headings" : $"no more than half of the mapped headings; missing are {string.Join(", ", missing)}";
        return new(
            "headings-missing",
            new(file, nearest),
            found,
            $"a row with the headings {string.Join(", ", wanted.Take(ShownLines).Select(name => $"'{name}'"))}{(wanted.Count > ShownLines ? "..." : "")}",
            "Check that the file belongs to this source; for a new layout draft a mapping with 'swingstudy source suggest'.");
    }

    public static Problem TooManyColumns(string file, int line, int columns) =>
        new("too-many-columns", new(file, line), $"{Number(columns)} columns", $"at most {Number(ReaderLimits.Columns)}", "Check the delimiter; split the file by columns if it is right.");

    public static Problem HeadingCleaned(Place place, string raw) =>
        new("heading-cleaned", place, $"characters in the heading that nobody sees ({Escaped(raw)})", "plain blanks and letters", "Nothing to do: the mapping addresses the heading as shown.");

    public static Problem HeadingRepeated(Place place, string text) =>
        new("heading-repeated", place, $"the heading '{text}' once more", "each heading once", $"Nothing to do: the mapping addresses this column as '{place.Column}'.");

    public static Problem CellCount(string file, int line, string raw, int found, int expected) =>
        new("cell-count", new(file, line), $"{Number(found)} cells in '{Short(raw)}'", $"{Number(expected)} cells, as many as headings", "Mend the line in a corrected export, or add a 'not_data' rule if it is a footer.");

    public static Problem QuoteUnterminated(string file, int line, string raw) =>
        new("quote-unterminated", new(file, line), $"a quote that never closes in '{Short(raw)}'", "a closing quote", "Close the quote or double it in a corrected export.");

    public static Problem TextBehindQuote(string file, int line, string raw) =>
        new("quote-misplaced", new(file, line), $"text behind a closing quote in '{Short(raw)}'", "a delimiter or the end of the line", "Double the quotes inside the cell in a corrected export.");

    public static Problem RecordTooLong(string file, int line) =>
        new("record-too-long", new(file, line), $"a line of more than {Number(ReaderLimits.RecordCharacters)} characters", "lines of rows", "Check the delimiter and the reader of the mapping, or export the file again.");

    public const string MendRecord = "Mend the record in a corrected export.";

    public static Problem JsonTooLarge(string file, long bytes) =>
        new("file-too-large", new(file), $"{Number(bytes)} bytes", $"a JSON document of at most {Number(ReaderLimits.JsonBytes)} bytes", "Export it as NDJSON, one record a line, or in parts.");

    public static Problem JsonMalformed(string file, int line, string reason) =>
        new("json-malformed", new(file, line), reason.Split(" LineNumber", 2)[0].TrimEnd('.'), $"a JSON document, nested at most {Number(ReaderLimits.JsonDepth)} deep", "Export the file again: it may be cut off. For one object a line declare 'reader: ndjson'.");

    public static Problem RecordsMissing(string file, string? path) =>
        new("records-missing", new(file), path is null ? "a document that is no array" : $"no array at '{path}'", "an array of records", "Declare the dotted path to it as 'records' in the mapping.");

    public static Problem NoWorkbook(string file) =>
        new("workbook-unreadable", new(file), "bytes that are no workbook", "a workbook (.xlsx, .xls)", "Save the file as a workbook, or declare the reader that fits it in the mapping; unpack a zip archive first.");

    public static Problem WorkbookDamaged(string file, string reason) =>
        new("workbook-damaged", new(file), $"a workbook that cannot be read to its end: {reason.TrimEnd('.')}", "a whole workbook", "Export it again: it may be cut off.");

    public static Problem WorkbookEncrypted(string file) =>
        new("workbook-encrypted", new(file), "a workbook locked with a password", "a workbook that opens without one", "Save a copy without password.");

    public static Problem WorkbookBomb(string file) =>
        new(
            "workbook-too-large",
            new(file),
            $"a workbook that unpacks to more than {Number(ReaderLimits.WorkbookBytes)} bytes, or to more than {Number(ReaderLimits.WorkbookRatio)} times its size",
            "a workbook of a usual size",
            "Make sure where the file comes from; export it in parts or as delimited text.");

    public static Problem SheetMissing(string file, string name, IEnumerable<string> sheets) =>
        new("sheet-missing", new(file), $"the sheets {string.Join(", ", sheets.Select(sheet => $"'{sheet}'"))}", $"a sheet '{name}'", "Mend 'sheet' of the mapping, or export the file again.");

    public static Problem SheetAmbiguous(string file, IEnumerable<string> sheets) =>
        new("sheet-ambiguous", new(file), $"the mapped headings in the sheets {string.Join(", ", sheets.Select(sheet => $"'{sheet}'"))}", "one sheet", "Declare 'sheet' in the mapping.");

    public static Problem FormulaUnvalued(Place place, string formula) =>
        new("formula-without-value", place, $"the formula '{Short(formula)}', saved without its value", "a value", "Open the workbook in a spreadsheet program and save it: that computes its formulas.");

    public static Problem DecimalMixed(string file, IReadOnlyList<DecimalEvidence> columns)
    {
        var point = columns.First(column => column.FirstPoint is not null);
        var comma = columns.First(column => column.FirstComma is not null);
        return new(
            "decimal-mixed",
            new(file),
            $"decimal points ('{point.FirstPoint!.Value.Text}' in column '{point.Column.Name}', line {Number(point.FirstPoint.Value.Line)}) and decimal commas "
            + $"('{comma.FirstComma!.Value.Text}' in column '{comma.Column.Name}', line {Number(comma.FirstComma.Value.Line)})",
            "one decimal sign",
            "Declare 'decimal' at the columns that differ, or for the whole text if one of them is a slip.");
    }

    public static Problem DecimalAmbiguous(string file, DecimalEvidence column) =>
        new(
            "decimal-ambiguous",
            new(file, column.FirstDoubtful!.Value.Line, column.Column.Name),
            $"'{column.FirstDoubtful.Value.Text}', and no cell of the file that settles whether its sign stands before decimals or thousands",
            "a known decimal sign",
            "Declare 'decimal' (and 'thousands', if it is one) in the mapping.");

    private static string Lines(IReadOnlyList<int> lines) =>
        (lines.Count == 1 ? "line " : "lines ") + string.Join(", ", lines.Take(ShownLines).Select(line => Number(line)))
        + (lines.Count > ShownLines ? $" and {Number(lines.Count - ShownLines)} more" : "");

    public static string Short(string raw) => raw.Length <= 80 ? raw : string.Concat(raw.AsSpan(0, 79), "…");

    private static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Escaped(string raw) =>
        string.Concat(raw.Select(sign => sign is ' ' or (> ' ' and < '\u007F') || char.IsLetterOrDigit(sign) ? sign.ToString() : $"\\u{(int)sign:X4}"));
}
