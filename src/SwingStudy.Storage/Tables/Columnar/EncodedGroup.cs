using Parquet.Meta;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>One row group as bytes that can stand anywhere in a file.</summary>
/// <param name="Content">Buffer that holds the bytes.</param>
/// <param name="Start">Where they begin in it; offsets in <paramref name="Chunks"/> count from the buffer's beginning.</param>
/// <param name="Length">How many they are.</param>
/// <param name="Rows">Rows.</param>
/// <param name="Chunks">What the encoder says of each column.</param>
/// <param name="Bounds">Bounds and gaps of each column.</param>
internal sealed record EncodedGroup(byte[] Content, int Start, int Length, int Rows, IReadOnlyList<ColumnMetaData> Chunks, ColumnBounds[] Bounds);
