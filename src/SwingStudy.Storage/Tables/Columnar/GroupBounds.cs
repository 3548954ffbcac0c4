using System.Buffers.Binary;
using Parquet.Meta;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Bounds of a column in one row group, as the footer has them.</summary>
internal static class GroupBounds
{
    /// <summary>Whether the group can hold a row in the range. Without bounds it can.</summary>
    internal static bool MayHold(RowGroup group, ColumnKind kind, RowRange range)
    {
        var statistics = group.Columns.Find(chunk => chunk.MetaData!.PathInSchema is [var name] && name == range.Column)?.MetaData!.Statistics;
        return statistics is not { MinValue: { } low, MaxValue: { } high } || (Number(kind, low) <= range.High && Number(kind, high) >= range.Low);
    }

    private static double Number(ColumnKind kind, byte[] bound) => kind switch
    {
        ColumnKind.Number => BinaryPrimitives.ReadDoubleLittleEndian(bound),
        ColumnKind.Instant => ParquetShape.Millis(BinaryPrimitives.ReadInt64LittleEndian(bound)),
        _ => BinaryPrimitives.ReadInt64LittleEndian(bound),
    };
}
