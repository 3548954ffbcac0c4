namespace SwingStudy.Ingestion.Readers;

/// <summary>Builds blocks cell by cell, for readers whose cells come with a kind.</summary>
internal sealed class BlockBuilder(int columns)
{
    private const int RowsOfBlock = 16_384;
    private const int CharactersOfBlock = 2 << 20;
    private int _length;
    private int _rowStart;
    private int _firstCell;

    /// <summary>The block at hand.</summary>
    public RawBlock Block { get; private set; } = New(columns);

    /// <summary>Whether it is time to hand the block over.</summary>
    public bool IsFull => Block.RowCount >= RowsOfBlock || _length >= CharactersOfBlock || Block.RejectedList.Count + Block.SkippedList.Count >= RowsOfBlock;

    /// <summary>Whether anything stands in it.</summary>
    public bool HasContent => Block.RowCount > 0 || Block.RejectedList.Count > 0 || Block.SkippedList.Count > 0;

    /// <summary>Begins a row; what is written before <see cref="EndRaw"/> is its raw text.</summary>
    public void BeginRow()
    {
        _rowStart = _length;
        _firstCell = Block.CellCount;
    }

    /// <summary>Appends text that belongs to no cell of its own.</summary>
    public void Write(ReadOnlySpan<char> text)
    {
        var length = _length;
        Block.Append(text, ref length);
        _length = length;
    }

    /// <summary>Appends the text of a cell and adds the cell.</summary>
    public void Cell(ReadOnlySpan<char> text, CellKind kind, double number = double.NaN)
    {
        var start = _length;
        Write(text);
        Block.AddCell(start, text.Length, kind, number);
    }

    /// <summary>The end of the raw text, to be given to <see cref="EndRow"/>.</summary>
    public int EndRaw() => _length;

    /// <summary>Ends the row whose raw text ends at <paramref name="endOfRaw"/>.</summary>
    public void EndRow(int endOfRaw, int line) => Block.AddRow(_rowStart, endOfRaw - _rowStart, _firstCell, line);

    /// <summary>Hands the block over and begins the next.</summary>
    public RawBlock Take()
    {
        var block = Block;
        Block = New(columns);
        _length = 0;
        return block;
    }

    private static RawBlock New(int columns) => new(64 * 1024, Math.Max(1, columns) * 256, 256) { ColumnCount = columns };
}
