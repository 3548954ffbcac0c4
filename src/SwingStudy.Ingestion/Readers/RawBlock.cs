using System.Buffers;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace SwingStudy.Ingestion.Readers;

/// <summary>
/// Some tens of thousands of rows as text: one pooled buffer and the places of the cells in it. It never changes once handed out, so that
/// threads may read it at the same time; whoever got it disposes of it, and touches no span of it afterwards.
/// </summary>
public sealed class RawBlock : IDisposable
{
    private char[] _text;
    private char[] _unescaped = [];
    private CellSpan[] _cells;
    private RowSpan[] _rows;
    private CellKind[]? _kinds;
    private double[]? _numbers;
    private int _unescapedLength;

    internal RawBlock(int characters, int cells, int rows)
    {
        _text = ArrayPool<char>.Shared.Rent(characters);
        _cells = ArrayPool<CellSpan>.Shared.Rent(cells);
        _rows = ArrayPool<RowSpan>.Shared.Rent(rows);
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
        ref readonly var cell = ref _cells[_rows[row].FirstCell + column];
        return cell.Start >= 0 ? _text.AsSpan(cell.Start, cell.Length) : _unescaped.AsSpan(~cell.Start, cell.Length);
    }

    /// <summary>Where the cells of a column stand.</summary>
    internal ColumnPlaces Places(int column) => new(_text, _cells.AsSpan(0, CellCount), _rows.AsSpan(0, RowCount), column);

    /// <summary>Whether any cell has a kind other than text.</summary>
    internal bool HasKinds => _kinds is not null;

    /// <summary>What the file says the cell is.</summary>
    public CellKind Kind(int row, int column) => _kinds is null ? CellKind.Text : _kinds[_rows[row].FirstCell + column];

    /// <summary>The number of a cell of kind <see cref="CellKind.Number"/>, or the serial of a <see cref="CellKind.Date"/>; NaN for others.</summary>
    public double Number(int row, int column) => _numbers is null ? double.NaN : _numbers[_rows[row].FirstCell + column];

    /// <summary>The line of the file (as an editor counts) or row of the sheet or array on which the row starts, from 1.</summary>
    public int Line(int row) => _rows[row].Line;

    /// <summary>The row as it stands in the file, quotes included, without its final line break; for a workbook the cells joined by tabs.</summary>
    public ReadOnlySpan<char> Raw(int row) => _text.AsSpan(_rows[row].Start, _rows[row].Length);

    /// <summary>Gives the buffers back.</summary>
    public void Dispose()
    {
        if (_cells.Length == 0)
            return;
        ArrayPool<char>.Shared.Return(_text);
        ArrayPool<CellSpan>.Shared.Return(_cells);
        ArrayPool<RowSpan>.Shared.Return(_rows);
        if (_unescaped.Length > 0)
            ArrayPool<char>.Shared.Return(_unescaped);
        if (_kinds is not null)
            ArrayPool<CellKind>.Shared.Return(_kinds);
        if (_numbers is not null)
            ArrayPool<double>.Shared.Return(_numbers);
        (_text, _unescaped, _cells, _rows, _kinds, _numbers, RowCount, CellCount) = ([], [], [], [], null, null, 0, 0);
    }

    /// <summary>Cells of a row in a block whose rows differ in length.</summary>
    internal int CellsOf(int row) => (row + 1 < RowCount ? _rows[row + 1].FirstCell : CellCount) - _rows[row].FirstCell;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void AddCell(int start, int length)
    {
        var cells = _cells;
        var count = CellCount;
        if ((uint)count < (uint)cells.Length)
            cells[count] = new CellSpan(start, length);
        else
            Grow(ref _cells)[count] = new CellSpan(start, length);
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
        var cells = _cells;
        var count = CellCount;
        while (cells.Length - count < sizeof(uint) * 8 + unrolled)
            cells = Grow(ref _cells);
        var added = BitOperations.PopCount(delimiters);
        CellCount = count + added;
        var behind = at + (sizeof(uint) * 8) - BitOperations.LeadingZeroCount(delimiters);
        ref var next = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(cells), count);

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
        _kinds ??= ArrayPool<CellKind>.Shared.Rent(_cells.Length);
        _numbers ??= ArrayPool<double>.Shared.Rent(_cells.Length);
        var count = CellCount;
        AddCell(start, length);
        (count < _kinds.Length ? _kinds : Grow(ref _kinds))[count] = kind;
        (count < _numbers.Length ? _numbers : Grow(ref _numbers))[count] = number;
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
        var rows = RowCount < _rows.Length ? _rows : Grow(ref _rows);
        rows[RowCount++] = new RowSpan(start, length, firstCell, line);
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
        var span = _cells[cell];
        return span.Start >= 0 ? _text.AsSpan(span.Start, span.Length) : _unescaped.AsSpan(~span.Start, span.Length);
    }

    private static T[] Grow<T>(ref T[] array)
    {
        var larger = ArrayPool<T>.Shared.Rent(Math.Max(256, array.Length * 2));
        array.CopyTo(larger, 0);
        if (array.Length > 0)
            ArrayPool<T>.Shared.Return(array);
        return array = larger;
    }
}
