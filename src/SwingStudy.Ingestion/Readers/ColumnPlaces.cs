using System.Runtime.CompilerServices;

namespace SwingStudy.Ingestion.Readers;

/// <summary>Where the cells of one column stand in the text of a block, row by row.</summary>
/// <param name="text">The text of the block.</param>
/// <param name="cells">All cells of the block.</param>
/// <param name="rows">The rows of the block.</param>
/// <param name="column">Position of the column.</param>
internal readonly ref struct ColumnPlaces(ReadOnlySpan<char> text, ReadOnlySpan<CellSpan> cells, ReadOnlySpan<RowSpan> rows, int column)
{
    private readonly ReadOnlySpan<CellSpan> _cells = cells;
    private readonly ReadOnlySpan<RowSpan> _rows = rows;
    private readonly int _column = column;

    /// <summary>The text.</summary>
    public ReadOnlySpan<char> Text { get; } = text;

    /// <summary>The place of the cell in a row; a negative start for one whose text does not stand there.</summary>
    public CellSpan this[int row]
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => _cells[_rows[row].FirstCell + _column];
    }
}
