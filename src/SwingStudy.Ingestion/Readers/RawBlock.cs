using System.Buffers;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using SwingStudy.Domain.Buffers;

namespace SwingStudy.Ingestion.Readers;

/// <summary>
/// Some tens of thousands of rows as text: one pooled buffer and the places of the cells in it. It never changes once handed out, so that
/// threads may read it at the same time; whoever got it disposes of it, and touches no span of it afterwards.
/// </summary>
public sealed class RawBlock : IDisposable
{
    private char[] _text;
    private char[] _unescaped = [];
    private Rented<CellSpan> _cells;
    private Rented<RowSpan> _rows;
    private Rented<CellKind> _kinds;
    private Rented<double> _numbers;
    private int _unescapedLength;

    internal RawBlock(int characters, int cells, int rows)
    {
        _text = ArrayPool<char>.Shared.Rent(characters);
        _cells = new Rented<CellSpan>(cells);
        _rows = new Rented<RowSpan>(rows);
    }

    /// <summary>Rows of data, in file order.</summary>
    public int RowCount { get; private set; }

    /// <summary>Cells of each row: one for each heading of the document.</summary>
    public int ColumnCount { get; internal init; }

    /// <summary>Records of this stretch of the file that could not be divided into cells, in file order.</summary>
    public IReadOnlyList<RejectedRecord> Rejected => RejectedList;

    /// <summary>Records of this stretch of the file that are no data, in file order.</summary>
    public IReadOnlyList<SkippedRecord> Skipped => SkippedList;

    internal List<RejectedRecord> RejectedList { get; } = [];

    internal List<SkippedRecord> SkippedList { get; } = [];

    internal Span<char> Text => _text;

    internal int CellCount { get; set; }

    /// <summary>The text of a cell without its quotes, exactly as it stands in the file otherwise: blanks around it are kept.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ReadOnlySpan<char> Cell(int row, int column)
    {
        ref readonly var cell = ref _cells.Span[FirstCell(row) + column];
        return cell.Start >= 0 ? _text.AsSpan(cell.Start, cell.Length) : _unescaped.AsSpan(~cell.Start, cell.Length);
    }

    /// <summary>Where the cells of a column stand.</summary>
    internal ColumnPlaces Places(int column) => new(_text, _cells.Span[..CellCount], _rows.Span[..RowCount], column);

    /// <summary>Whether any cell has a kind other than text.</summary>
    internal bool HasKinds { get; private set; }

    /// <summary>What the file says the cell is.</summary>
    public CellKind Kind(int row, int column) => HasKinds ? _kinds.Span[FirstCell(row) + column] : CellKind.Text;

    /// <summary>The number of a cell of kind <see cref="CellKind.Number"/>, or the serial of a <see cref="CellKind.Date"/>; NaN for others.</summary>
    public double Number(int row, int column) => HasKinds ? _numbers.Span[FirstCell(row) + column] : double.NaN;

    /// <summary>The line of the file (as an editor counts) or row of the sheet or array on which the row starts, from 1.</summary>
    public int Line(int row) => _rows.Span[row].Line;

    /// <summary>The row as it stands in the file, quotes included, without its final line break; for a workbook the cells joined by tabs.</summary>
    public ReadOnlySpan<char> Raw(int row)
    {
        var (start, length, _, _) = _rows.Span[row];
        return _text.AsSpan(start, length);
    }

    /// <summary>Gives the buffers back.</summary>
    public void Dispose()
    {
        if (_text.Length == 0)
            return;
        ArrayPool<char>.Shared.Return(_text);
        if (_unescaped.Length > 0)
            ArrayPool<char>.Shared.Return(_unescaped);
        _cells.Return();
        _rows.Return();
        _kinds.Return();
        _numbers.Return();
        (_text, _unescaped, HasKinds, RowCount, CellCount) = ([], [], false, 0, 0);
    }

    /// <summary>Cells of a row in a block whose rows differ in length.</summary>
    internal int CellsOf(int row) => (row + 1 < RowCount ? FirstCell(row + 1) : CellCount) - FirstCell(row);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void AddCell(int start, int length)
    {
        var count = CellCount;
        if (count >= _cells.Span.Length)
            _cells.Grow();
        _cells.Span[count] = new CellSpan(start, length);
        CellCount = count + 1;
    }

    /// <summary>Adds a cell for each delimiter among 32 characters.</summary>
    /// <param name="at">Position of the first of them.</param>
    /// <param name="delimiters">A bit for each, the lowest for the first.</param>
    /// <param name="start">Start of the cell that the first delimiter ends.</param>
    /// <returns>Start of the cell behind the last one.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal int AddCells(int at, uint delimiters, int start)
    {
        const int unrolled = 4;
        if (delimiters == 0)
            return start;
        var count = CellCount;
        var cells = _cells.Span;
        while (cells.Length - count < (sizeof(uint) * 8) + unrolled)
        {
            _cells.Grow();
            cells = _cells.Span;
        }

        var added = BitOperations.PopCount(delimiters);
        CellCount = count + added;
        var behind = at + (sizeof(uint) * 8) - BitOperations.LeadingZeroCount(delimiters);
        ref var next = ref Unsafe.Add(ref MemoryMarshal.GetReference(cells), count);

        // Four at a time: what is written beyond the last one is written over by the next cells, and the loop ends where it is foreseen.
        while (added > 0)
        {
            for (var i = 0; i < unrolled; i++)
            {
                var p = at + BitOperations.TrailingZeroCount(delimiters);
                delimiters &= delimiters - 1;
                Unsafe.Add(ref next, i) = new CellSpan(start, p - start);
                start = p + 1;
            }

            next = ref Unsafe.Add(ref next, unrolled);
            added -= unrolled;
        }

        return behind;
    }

    /// <summary>Adds a cell with its kind; all cells of the block are then added this way.</summary>
    internal void AddCell(int start, int length, CellKind kind, double number)
    {
        HasKinds = true;
        var count = CellCount;
        AddCell(start, length);
        while (_kinds.Span.Length <= count)
            _kinds.Grow();
        while (_numbers.Span.Length <= count)
            _numbers.Grow();
        _kinds.Span[count] = kind;
        _numbers.Span[count] = number;
    }

    /// <summary>Adds a quoted cell whose doubled quotes become single ones.</summary>
    internal void AddUnescaped(ReadOnlySpan<char> quoted)
    {
        while (_unescapedLength + quoted.Length > _unescaped.Length)
            Grow(ref _unescaped);
        var start = _unescapedLength;
        for (var i = 0; i < quoted.Length; i++)
        {
            _unescaped[_unescapedLength++] = quoted[i];
            if (quoted[i] == '"')
                i++;
        }

        AddCell(~start, _unescapedLength - start);
    }

    /// <summary>Adds a cell whose text does not stand in the block's text.</summary>
    internal void AddPlain(ReadOnlySpan<char> text)
    {
        while (_unescapedLength + text.Length > _unescaped.Length)
            Grow(ref _unescaped);
        text.CopyTo(_unescaped.AsSpan(_unescapedLength));
        AddCell(~_unescapedLength, text.Length);
        _unescapedLength += text.Length;
    }

    internal void AddRow(int start, int length, int firstCell, int line)
    {
        if (RowCount >= _rows.Span.Length)
            _rows.Grow();
        _rows.Span[RowCount++] = new RowSpan(start, length, firstCell, line);
    }

    /// <summary>Appends text to a block that is built cell by cell.</summary>
    internal void Append(ReadOnlySpan<char> text, ref int length)
    {
        while (length + text.Length > _text.Length)
            Grow(ref _text);
        text.CopyTo(_text.AsSpan(length));
        length += text.Length;
    }

    /// <summary>The text of a cell that belongs to no row yet.</summary>
    internal ReadOnlySpan<char> LooseCell(int cell)
    {
        var span = _cells.Span[cell];
        return span.Start >= 0 ? _text.AsSpan(span.Start, span.Length) : _unescaped.AsSpan(~span.Start, span.Length);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int FirstCell(int row) => _rows.Span[row].FirstCell;

    private static void Grow(ref char[] text)
    {
        var larger = ArrayPool<char>.Shared.Rent(Math.Max(256, text.Length * 2));
        text.CopyTo(larger, 0);
        if (text.Length > 0)
            ArrayPool<char>.Shared.Return(text);
        text = larger;
    }
}
