using System.Buffers;
using System.Buffers.Binary;
using System.Runtime.InteropServices;
using Parquet.Meta;
using SwingStudy.Domain.Tables;
using ZstdSharp;
using ParquetType = Parquet.Meta.Type;
using Utf8 = System.Text.Encoding;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Encodes columns of few distinct values as a dictionary and places in it: much smaller and faster than each value for itself, and
/// something the library does for texts alone, and slowly. Dispose when a row group is done.</summary>
/// <remarks>Source: Apache Parquet, Encodings.md and parquet.thrift (PageHeader).</remarks>
internal sealed class DictionaryEncoder : IDisposable
{
    private const int CompressionLevel = 3;
    private const int RowsPerDistinctNumber = 4;
    private const int RowsPerDistinctText = 2;
    private const int DataPage = 0, DictionaryPage = 2;
    private readonly Compressor _compressor = new(CompressionLevel);
    private readonly int[] _places;
    private readonly int[] _levels;

    /// <summary>Prepares for row groups of up to that many rows.</summary>
    internal DictionaryEncoder(int rows)
    {
        _places = new int[rows];
        _levels = new int[rows];
    }

    /// <summary>The column's pages; null when a dictionary does not pay.</summary>
    internal EncodedChunk? TryEncode(ColumnDefinition definition, Column column) => column switch
    {
        NumberColumn numbers => TryNumbers(definition, numbers.Values),
        TextColumn texts => TryTexts(definition, texts.Values),
        _ => null,
    };

    /// <inheritdoc/>
    public void Dispose() => _compressor.Dispose();

    private EncodedChunk? TryNumbers(ColumnDefinition definition, double[] values)
    {
        var distinct = DistinctNumbers.Of(values, values.Length / RowsPerDistinctNumber, _places, out var present);
        if (distinct is null or { Count: 0 })
            return null;
        for (var i = 0; i < values.Length; i++)
            _levels[i] = double.IsNaN(values[i]) ? 0 : 1;
        return Chunk(definition, ParquetType.DOUBLE, values.Length, present, distinct.Count, MemoryMarshal.AsBytes(distinct.Values));
    }

    private EncodedChunk? TryTexts(ColumnDefinition definition, string?[] values)
    {
        var distinct = DistinctTexts.Of(values, values.Length / RowsPerDistinctText, _places, out var present);
        if (distinct is null or { Values.Count: 0 })
            return null;
        for (var i = 0; i < values.Length; i++)
            _levels[i] = values[i] is null ? 0 : 1;
        return Chunk(definition, ParquetType.BYTE_ARRAY, values.Length, present, distinct.Values.Count, Plain(distinct.Values));
    }

    private static ReadOnlySpan<byte> Plain(IReadOnlyList<string> texts)
    {
        var bytes = new ArrayBufferWriter<byte>();
        foreach (var text in texts)
        {
            var size = Utf8.UTF8.GetByteCount(text);
            var target = bytes.GetSpan(sizeof(int) + size);
            BinaryPrimitives.WriteInt32LittleEndian(target, size);
            Utf8.UTF8.GetBytes(text, target[sizeof(int)..]);
            bytes.Advance(sizeof(int) + size);
        }

        return bytes.WrittenSpan;
    }

    private EncodedChunk Chunk(ColumnDefinition definition, ParquetType type, int rows, int present, int distinct, ReadOnlySpan<byte> dictionary)
    {
        var pages = new ArrayBufferWriter<byte>();
        var uncompressed = Page(pages, DictionaryPage, 7, distinct, dictionary);
        var dictionarySize = pages.WrittenCount;
        var data = new ArrayBufferWriter<byte>((rows / 2) + 64);
        WriteLevels(data, _levels.AsSpan(0, rows));
        var bits = HybridRuns.BitsFor(distinct);
        data.GetSpan(1)[0] = (byte)bits;
        data.Advance(1);
        HybridRuns.Write(data, _places.AsSpan(0, present), bits);
        uncompressed += Page(pages, DataPage, 5, rows, data.WrittenSpan);
        return new EncodedChunk(pages.WrittenMemory, type, [Encoding.PLAIN_DICTIONARY, Encoding.RLE], [definition.Name], rows, uncompressed, dictionarySize);
    }

    private static void WriteLevels(ArrayBufferWriter<byte> data, ReadOnlySpan<int> levels)
    {
        var runs = new ArrayBufferWriter<byte>((levels.Length / 8) + 64);
        HybridRuns.Write(runs, levels, 1);
        BinaryPrimitives.WriteInt32LittleEndian(data.GetSpan(sizeof(int)), runs.WrittenCount);
        data.Advance(sizeof(int));
        data.Write(runs.WrittenSpan);
    }

    /// <summary>Appends a page and returns its size before compression, header included.</summary>
    private int Page(ArrayBufferWriter<byte> pages, int kind, int headerField, int values, ReadOnlySpan<byte> content)
    {
        var compressed = _compressor.Wrap(content);
        var header = new CompactThrift();
        header.WriteInt(1, kind);
        header.WriteInt(2, content.Length);
        header.WriteInt(3, compressed.Length);
        header.WriteStruct(headerField, () =>
        {
            header.WriteInt(1, values);
            header.WriteInt(2, (int)Encoding.PLAIN_DICTIONARY);
            if (kind != DataPage)
                return;
            header.WriteInt(3, (int)Encoding.RLE);
            header.WriteInt(4, (int)Encoding.RLE);
        });
        header.End();
        var headerBytes = header.ToArray();
        pages.Write(headerBytes);
        pages.Write(compressed);
        return headerBytes.Length + content.Length;
    }
}
