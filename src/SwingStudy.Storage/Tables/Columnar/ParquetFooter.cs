using System.Buffers.Binary;
using Parquet.Meta;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>The footer of a data file: schema, row groups, and statistics that mean what the format says.</summary>
/// <remarks>
/// Written here, because row groups are encoded apart from each other and joined, and because the library's own footer leaves out the
/// column orders without which readers may not trust bounds of texts. Field numbers: Apache Parquet, parquet.thrift.
/// </remarks>
internal static class ParquetFooter
{
    private const int FormatVersion = 1;
    private const string CreatedBy = "SwingStudy";

    /// <summary>The footer's bytes, without its length and the closing mark.</summary>
    /// <param name="table">Columns.</param>
    /// <param name="groups">Row groups, and where each of them begins in the file; their columns follow each other.</param>
    internal static byte[] Write(TableDefinition table, IReadOnlyList<(EncodedGroup Group, long Offset)> groups)
    {
        var thrift = new CompactThrift();
        thrift.WriteInt(1, FormatVersion);
        var schema = ParquetShape.Elements(table);
        thrift.WriteStructs(2, schema, element => WriteElement(thrift, element));
        thrift.WriteLong(3, groups.Sum(group => (long)group.Group.Rows));
        thrift.WriteStructs(4, groups, group => WriteGroup(thrift, table, group.Group, group.Offset));
        thrift.WriteText(6, CreatedBy);
        thrift.WriteStructs(7, table.Columns, _ => thrift.WriteStruct(1, () => { }));
        thrift.End();
        return thrift.ToArray();
    }

    private static void WriteElement(CompactThrift thrift, ParquetElement element)
    {
        if (element.Type is { } type)
            thrift.WriteInt(1, (int)type);
        if (element.Repetition is { } repetition)
            thrift.WriteInt(3, (int)repetition);
        thrift.WriteText(4, element.Name);
        if (element.Children > 0)
            thrift.WriteInt(5, element.Children);
        if (element.Converted is { } converted)
            thrift.WriteInt(6, (int)converted);
        if (element.Logical != LogicalKind.None)
            thrift.WriteStruct(10, () => WriteLogical(thrift, element.Logical));
    }

    private static void WriteLogical(CompactThrift thrift, LogicalKind kind) => thrift.WriteStruct((int)kind, () =>
    {
        if (kind != LogicalKind.Timestamp)
            return;
        thrift.WriteBoolean(1, true);
        thrift.WriteStruct(2, () => thrift.WriteStruct(2, () => { }));
    });

    private static void WriteGroup(CompactThrift thrift, TableDefinition table, EncodedGroup group, long offset)
    {
        var places = new List<(int Column, long Offset)>(group.Chunks.Length);
        var next = offset;
        for (var i = 0; i < group.Chunks.Length; i++)
        {
            places.Add((i, next));
            next += group.Chunks[i].Size;
        }

        thrift.WriteStructs(1, places, place => WriteChunk(thrift, table.Columns[place.Column], group.Chunks[place.Column], group.Bounds[place.Column], place.Offset));
        thrift.WriteLong(2, group.Chunks.Sum(chunk => chunk.UncompressedSize));
        thrift.WriteLong(3, group.Rows);
        thrift.WriteLong(5, offset);
        thrift.WriteLong(6, next - offset);
    }

    private static void WriteChunk(CompactThrift thrift, ColumnDefinition column, EncodedChunk chunk, ColumnBounds bounds, long offset)
    {
        thrift.WriteLong(2, 0);
        thrift.WriteStruct(3, () =>
        {
            thrift.WriteInt(1, (int)chunk.Type);
            thrift.WriteInts(2, [.. chunk.Encodings.Select(encoding => (int)encoding)]);
            thrift.WriteTexts(3, chunk.Path);
            thrift.WriteInt(4, (int)CompressionCodec.ZSTD);
            thrift.WriteLong(5, chunk.Values);
            thrift.WriteLong(6, chunk.UncompressedSize);
            thrift.WriteLong(7, chunk.Size);
            thrift.WriteLong(9, offset + chunk.DictionarySize);
            if (chunk.DictionarySize > 0)
                thrift.WriteLong(11, offset);
            if (column.Kind != ColumnKind.NumberList)
                thrift.WriteStruct(12, () => WriteStatistics(thrift, column.Kind, bounds));
        });
    }

    private static void WriteStatistics(CompactThrift thrift, ColumnKind kind, ColumnBounds bounds)
    {
        thrift.WriteLong(3, bounds.Missing);
        if (Bytes(kind, bounds.High, bounds.HighText, isHigh: true) is { } high && Bytes(kind, bounds.Low, bounds.LowText, isHigh: false) is { } low)
        {
            thrift.WriteBinary(5, high);
            thrift.WriteBinary(6, low);
        }
    }

    private static byte[]? Bytes(ColumnKind kind, object? bound, string? text, bool isHigh)
    {
        if (kind == ColumnKind.Text)
            return text is null ? null : System.Text.Encoding.UTF8.GetBytes(text);
        var bytes = new byte[sizeof(long)];
        switch (bound)
        {
            case double number:
                // Both zeros are equal: the format asks for the lesser one below and the greater one above.
                BinaryPrimitives.WriteDoubleLittleEndian(bytes, number != 0 ? number : isHigh ? 0.0 : -0.0);
                return bytes;
            case long number:
                BinaryPrimitives.WriteInt64LittleEndian(bytes, kind == ColumnKind.Instant ? ParquetShape.Micros(number) : number);
                return bytes;
            default:
                return null;
        }
    }
}
