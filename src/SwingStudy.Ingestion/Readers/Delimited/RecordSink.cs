using System.Runtime.CompilerServices;

namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>Decides what a tokenised record is: a row, a repeated heading, nothing, or a reject.</summary>
internal sealed class RecordSink
{
    private const int MostCellsOfReject = 1000;
    private readonly string _file;
    private readonly char? _delimiter;
    private readonly int _columns;
    private readonly IReadOnlyList<(string Raw, SkipReason Reason)> _known;
    private readonly bool _endsWithDelimiter;
    private readonly int _knownLength0;
    private readonly int _knownLength1;
    private readonly int _knownLength2;

    private RecordSink(string file, char? delimiter, int columns, IReadOnlyList<(string Raw, SkipReason Reason)> known, bool endsWithDelimiter)
    {
        _file = file;
        _delimiter = delimiter;
        _columns = columns;
        _known = known;
        _endsWithDelimiter = endsWithDelimiter;
        _knownLength0 = known.Count > 0 ? known[0].Raw.Length : -1;
        _knownLength1 = known.Count > 1 ? known[1].Raw.Length : -1;
        _knownLength2 = known.Count > 2 ? known[2].Raw.Length : -1;
    }

    /// <summary>Takes each record for a row, whatever its cells; what cannot be divided becomes a row of one cell.</summary>
    public static RecordSink ForAnything(string file) => new(file, null, -1, [], false);

    /// <summary>Takes records of as many cells as there are headings.</summary>
    /// <param name="file">For messages.</param>
    /// <param name="layout">The headings and what stands around them.</param>
    /// <param name="delimiter">For telling empty records.</param>
    public static RecordSink ForRows(string file, RowLayout layout, char? delimiter)
    {
        List<(string, SkipReason)> known = [.. layout.HeadingTexts.Select(text => (text, SkipReason.RepeatedHeading))];
        if (layout.UnitsText is { } units)
            known.Add((units, SkipReason.RepeatedUnits));
        return new(file, delimiter, layout.Columns.Headings.Count, known, layout.RowsEndWithDelimiter);
    }

    /// <summary>Takes a record whose cells lie in the block from <paramref name="firstCell"/> on.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Take(RawBlock block, int start, int length, int firstCell, int line)
    {
        if (block.CellCount - firstCell == _columns && length >= _columns && length <= ReaderLimits.RecordCharacters
            && length != _knownLength0 && length != _knownLength1 && length != _knownLength2)
            block.AddRow(start, length, firstCell, line);
        else
            TakeOdd(block, start, length, firstCell, line);
    }

    /// <summary>Rejects a physical line that opens a quote which does not close as it should.</summary>
    public void Reject(RawBlock block, ReadOnlySpan<char> raw, int line, QuotedState state)
    {
        if (_columns < 0)
        {
            TakeWhole(block, raw, line);
            return;
        }

        var text = Shortened(raw);
        var problem = state == QuotedState.TextBehind
            ? ReaderMessages.TextBehindQuote(_file, line, text)
            : ReaderMessages.QuoteUnterminated(_file, line, text);
        block.RejectedList.Add(new RejectedRecord(line, text, [], problem));
    }

    /// <summary>Rejects a line that is longer than any record may be, given its beginning.</summary>
    public void RejectLong(RawBlock block, ReadOnlySpan<char> beginning, int line)
    {
        if (_columns < 0)
            TakeWhole(block, beginning[..Math.Min(beginning.Length, ReaderLimits.RawCharacters)], line);
        else
            block.RejectedList.Add(new RejectedRecord(line, Shortened(beginning), [], ReaderMessages.RecordTooLong(_file, line)));
    }

    private static void TakeWhole(RawBlock block, ReadOnlySpan<char> raw, int line)
    {
        var firstCell = block.CellCount;
        block.AddPlain(raw);
        block.AddRow(0, 0, firstCell, line);
    }

    private static string Shortened(ReadOnlySpan<char> raw) =>
        raw.Length <= ReaderLimits.RawCharacters ? raw.ToString() : string.Concat(raw[..(ReaderLimits.RawCharacters - 1)], "…");

    private void TakeOdd(RawBlock block, int start, int length, int firstCell, int line)
    {
        var raw = block.Text.Slice(start, length);
        var count = block.CellCount - firstCell;
        if (_columns < 0)
        {
            block.AddRow(start, length, firstCell, line);
            return;
        }

        if (IsBlank(raw))
        {
            block.SkippedList.Add(new SkippedRecord(line, SkipReason.Blank));
        }
        else if (length > ReaderLimits.RecordCharacters)
        {
            RejectLong(block, raw, line);
        }
        else if (IsKnown(raw, out var reason))
        {
            block.SkippedList.Add(new SkippedRecord(line, reason));
        }
        else if (count == _columns)
        {
            block.AddRow(start, length, firstCell, line);
            return;
        }
        else if (_endsWithDelimiter && count == _columns + 1 && block.LooseCell(block.CellCount - 1).IsEmpty)
        {
            block.CellCount--;
            block.AddRow(start, length, firstCell, line);
            return;
        }
        else
        {
            var cells = new string[Math.Min(count, MostCellsOfReject)];
            for (var i = 0; i < cells.Length; i++)
                cells[i] = block.LooseCell(firstCell + i).ToString();
            var text = Shortened(raw);
            block.RejectedList.Add(new RejectedRecord(line, text, cells, ReaderMessages.CellCount(_file, line, text, count, _columns)));
        }

        block.CellCount = firstCell;
    }

    private bool IsKnown(ReadOnlySpan<char> raw, out SkipReason reason)
    {
        foreach (var (text, why) in _known)
        {
            if (raw.SequenceEqual(text))
            {
                reason = why;
                return true;
            }
        }

        reason = default;
        return false;
    }

    private bool IsBlank(ReadOnlySpan<char> raw)
    {
        foreach (var sign in raw)
        {
            if (sign != _delimiter && !char.IsWhiteSpace(sign))
                return false;
        }

        return true;
    }
}
