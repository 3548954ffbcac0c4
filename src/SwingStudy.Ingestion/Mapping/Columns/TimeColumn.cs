using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Mapping.Times;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping.Columns;

/// <summary>Where the time of a row stands and how it is read, decided once a file.</summary>
internal sealed class TimeColumn(ColumnPlace[] parts, TimeFormat? format, MissingTokens missing, bool epoch1904)
{
    private const int LongestTime = 96;
    private const int DaysBetweenEpochs = 1462;
    private readonly bool _isOneText = parts is [{ IsFixed: false }] && format is { AddsParts: false };

    /// <summary>The places whose texts are joined by blanks.</summary>
    public IReadOnlyList<ColumnPlace> Parts => parts;

    /// <summary>The format; null while it is being found.</summary>
    public TimeFormat? Format => format;

    /// <summary>Headings of the parts, for messages.</summary>
    public string Name => string.Join(" + ", parts.Select(part => part.Name));

    /// <summary>What a good cell would have held.</summary>
    public string Expected => $"a time written {format!.Text}";

    /// <summary>Whether the day stands once for the file while rows tell the hour.</summary>
    public bool HasFixedDay => parts.Length > 1 && parts.Any(part => part.IsFixed) && parts.Any(part => !part.IsFixed);

    /// <summary>Reads the time of a row in milliseconds since 1970: UTC when <paramref name="isUtc"/>, else local.</summary>
    public CellVerdict Read(RawBlock block, int row, out long millis, out bool isUtc)
    {
        if (_isOneText && block.Kind(row, parts[0].Position) is CellKind.Text or CellKind.Number)
        {
            var cell = CellText.Trim(block.Cell(row, parts[0].Position));
            if (format!.TryRead(cell, out millis, out isUtc))
                return CellVerdict.Value;
            return missing.Hold(cell) ? CellVerdict.Missing : CellVerdict.Unparsable;
        }

        if (IsSerial(block, row))
            return ReadSerial(block, row, out millis, out isUtc);
        Span<char> text = stackalloc char[LongestTime];
        var verdict = Join(block, row, text, out var length);
        millis = 0;
        isUtc = false;
        if (verdict != CellVerdict.Value)
            return verdict;
        return format!.TryRead(text[..length], out millis, out isUtc) ? CellVerdict.Value : CellVerdict.Unparsable;
    }

    /// <summary>The joined text of a row, for finding the format; false when it is missing, too long, or a serial that needs no format.</summary>
    public bool TryJoin(RawBlock block, int row, Span<char> text, out int length)
    {
        length = 0;
        return !IsTyped(block, row) && Join(block, row, text, out length) == CellVerdict.Value;
    }

    /// <summary>The texts of a row as they stand, for the rejects.</summary>
    public string RawOf(RawBlock block, int row)
    {
        var texts = new string[parts.Length];
        for (var i = 0; i < parts.Length; i++)
            texts[i] = parts[i].Fixed ?? block.Cell(row, parts[i].Position).ToString();
        return string.Join(' ', texts);
    }

    private bool IsSerial(RawBlock block, int row) => format is { AddsParts: true } || IsTyped(block, row);

    /// <summary>Cells that a workbook itself holds as dates tell the time whatever format is declared for texts.</summary>
    private bool IsTyped(RawBlock block, int row)
    {
        var dates = false;
        foreach (var part in parts)
        {
            if (part.IsFixed)
                return false;
            var kind = block.Kind(row, part.Position);
            if (kind is not (CellKind.Date or CellKind.Number))
                return false;
            dates |= kind == CellKind.Date;
        }

        return dates;
    }

    private CellVerdict ReadSerial(RawBlock block, int row, out long millis, out bool isUtc)
    {
        millis = 0;
        isUtc = false;
        double days = 0;
        foreach (var part in parts)
        {
            var kind = part.IsFixed ? CellKind.Text : block.Kind(row, part.Position);
            if (kind is CellKind.Date or CellKind.Number && !double.IsNaN(block.Number(row, part.Position)))
            {
                days += block.Number(row, part.Position);
                continue;
            }

            var cell = CellText.Trim(part.IsFixed ? part.Fixed : block.Cell(row, part.Position));
            if (missing.Hold(cell))
                return CellVerdict.Missing;
            if (kind is CellKind.Date or CellKind.Boolean or CellKind.Error || !TimeFormat.TrySerial(cell, out var number))
                return CellVerdict.Unparsable;
            days += number;
        }

        return ExcelSerial.TryToLocalMillis(epoch1904 ? days + DaysBetweenEpochs : days, out millis) ? CellVerdict.Value : CellVerdict.Unparsable;
    }

    private CellVerdict Join(RawBlock block, int row, Span<char> text, out int length)
    {
        length = 0;
        foreach (var part in parts)
        {
            var cell = CellText.Trim(part.IsFixed ? part.Fixed : block.Cell(row, part.Position));
            if (missing.Hold(cell))
                return CellVerdict.Missing;
            if (length + cell.Length + 1 > text.Length)
                return CellVerdict.Unparsable;
            if (length > 0)
                text[length++] = ' ';
            cell.CopyTo(text[length..]);
            length += cell.Length;
        }

        return CellVerdict.Value;
    }
}
