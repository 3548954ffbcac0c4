namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>One row group as bytes that can stand anywhere in a file.</summary>
/// <param name="Rows">Rows.</param>
/// <param name="Chunks">The columns in the table's order.</param>
/// <param name="Bounds">Bounds and gaps of each column.</param>
internal sealed record EncodedGroup(int Rows, EncodedChunk[] Chunks, ColumnBounds[] Bounds);
