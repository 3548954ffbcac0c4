using System.Runtime.CompilerServices;

namespace SwingStudy.Ingestion.Readers;

/// <summary>The cells of one row of a block.</summary>
internal readonly ref struct RowCells
{
    private readonly RawBlock _block;
    private readonly ReadOnlySpan<CellSpan> _cells;
    private readonly ReadOnlySpan<char> _text;
    private readonly int _row;

    internal RowCells(RawBlock block, int row, ReadOnlySpan<CellSpan> cells, ReadOnlySpan<char> text)
    {
        _block = block;
        _row = row;
        _cells = cells;
        _text = text;
    }

    /// <summary>Line of the row; see <see cref="RawBlock.Line"/>.</summary>
    public int Line => _block.Line(_row);

    /// <summary>Text of a cell; see <see cref="RawBlock.Cell"/>.</summary>
    public ReadOnlySpan<char> this[int column]
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get
        {
            var cell = _cells[column];
            return cell.Start >= 0 ? _text.Slice(cell.Start, cell.Length) : _block.Cell(_row, column);
        }
    }

    /// <summary>What the file says the cell is.</summary>
    public CellKind Kind(int column) => _block.Kind(_row, column);

    /// <summary>Its number; see <see cref="RawBlock.Number"/>.</summary>
    public double Number(int column) => _block.Number(_row, column);
}
