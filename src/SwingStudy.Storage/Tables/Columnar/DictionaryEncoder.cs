using System.Buffers;
using System.Buffers.Binary;
using System.Runtime.InteropServices;
using Parquet.Meta;
using SwingStudy.Domain.Tables;
using ParquetType = Parquet.Meta.Type;
using Utf8 = System.Text.Encoding;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Encodes columns of few distinct values as a dictionary and places in it: much smaller and faster than each value for itself.</summary>
/// <param name="pages">Takes the pages.</param>
/// <param name="rows">Rows of the row group.</param>
internal sealed class DictionaryEncoder(PageWriter pages, int rows)
{
    private const int CompressionLevel = 3;
    private const int RowsPerDistinctNumber = 4;
    private const int RowsPerDistinctText = 2;
    private readonly int[] _places = new int[rows];
    private readonly int[] _levels = new int[rows];
    private readonly DistinctNumbers _numbers = pages.Numbers;

    /// <summary>The column's pages; null when a dictionary does not pay.</summary>
    internal EncodedChunk? TryEncode(ColumnDefinition definition, Column column) => column switch
    {
        NumberColumn numbers => TryNumbers(definition, numbers.Values),
        TextColumn texts => TryTexts(definition, texts.Values),
        _ => null,
    };

    private EncodedChunk? TryNumbers(ColumnDefinition definition, double[] values)
    {
        _numbers.Begin(values.Length / RowsPerDistinctNumber);
        var present = 0;
        for (var i = 0; i < values.Length; i++)
        {
            var isPresent = !double.IsNaN(values[i]);
            _levels[i] = isPresent ? 1 : 0;
            if (!isPresent)
                continue;
            if (_numbers.PlaceOf(values[i]) is not (>= 0 and var place))
                return null;
            _places[present++] = place;
        }

        return present == 0 ? null : Chunk(definition, ParquetType.DOUBLE, present, _numbers.Count, MemoryMarshal.AsBytes(_numbers.Values));
    }

    private EncodedChunk? TryTexts(ColumnDefinition definition, string?[] values)
    {
        var distinct = DistinctTexts.Of(values, values.Length / RowsPerDistinctText, _places, out var present);
        if (distinct is null or { Values.Count: 0 })
            return null;
        for (var i = 0; i < values.Length; i++)
            _levels[i] = values[i] is null ? 0 : 1;
        return Chunk(definition, ParquetType.BYTE_ARRAY, present, distinct.Values.Count, Plain(distinct.Values));
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

    private EncodedChunk Chunk(ColumnDefinition definition, ParquetType type, int present, int distinct, ReadOnlySpan<byte> dictionary)
    {
        pages.Begin();
        pages.WriteDictionary(dictionary, distinct, CompressionLevel);
        pages.WriteLevels(_levels, 1);
        var bits = HybridRuns.BitsFor(distinct);
        pages.Data.GetSpan(1)[0] = (byte)bits;
        pages.Data.Advance(1);
        HybridRuns.Write(pages.Data, _places.AsSpan(0, present), bits);
        return pages.End(type, [definition.Name], rows, Encoding.PLAIN_DICTIONARY, CompressionLevel);
    }
}
