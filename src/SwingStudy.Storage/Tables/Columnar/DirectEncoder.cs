using System.Buffers;
using System.Runtime.InteropServices;
using Parquet.Meta;
using SwingStudy.Domain.Tables;
using ParquetType = Parquet.Meta.Type;
using Utf8 = System.Text.Encoding;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Encodes columns value by value: numbers as they are, whole numbers and moments as differences, texts by what differs from the one before.</summary>
/// <remarks>Source: Apache Parquet, Encodings.md; lists: LogicalTypes.md, "Lists".</remarks>
/// <param name="pages">Takes the pages.</param>
internal sealed class DirectEncoder(PageWriter pages)
{
    // The fastest level: measurements lose less than a tenth in size by it and are written twice as fast.
    private const int CompressionLevel = 1;

    /// <summary>The column's pages.</summary>
    internal EncodedChunk Encode(ColumnDefinition definition, Column column)
    {
        pages.Begin();
        return column switch
        {
            TextColumn text => Texts(definition, text.Values),
            NumberColumn numbers => Numbers(definition, numbers.Values),
            IntegerColumn integers => Whole(definition, integers.Values.Length, row => integers.Values[row]),
            InstantColumn instants => Whole(definition, instants.Length, row => instants.UnixMillis[row] is var millis and not InstantColumn.MissingMillis ? ParquetShape.Micros(millis) : null),
            BooleanColumn booleans => Booleans(definition, booleans.Values),
            NumberListColumn lists => Lists(definition, lists.Values),
            _ => throw new ArgumentOutOfRangeException(nameof(column), column.Kind, "Unknown kind of column."),
        };
    }

    private EncodedChunk Numbers(ColumnDefinition definition, double[] values)
    {
        var levels = ArrayPool<int>.Shared.Rent(values.Length);
        var present = ArrayPool<double>.Shared.Rent(values.Length);
        var count = 0;
        for (var i = 0; i < values.Length; i++)
        {
            var isPresent = !double.IsNaN(values[i]);
            levels[i] = isPresent ? 1 : 0;
            if (isPresent)
                present[count++] = values[i];
        }

        pages.WriteLevels(levels.AsSpan(0, values.Length), 1);
        pages.Data.Write(MemoryMarshal.AsBytes(present.AsSpan(0, count)));
        ArrayPool<int>.Shared.Return(levels);
        ArrayPool<double>.Shared.Return(present);
        return pages.End(ParquetType.DOUBLE, [definition.Name], values.Length, Encoding.PLAIN, CompressionLevel);
    }

    private EncodedChunk Whole(ColumnDefinition definition, int rows, Func<int, long?> valueOf)
    {
        var levels = ArrayPool<int>.Shared.Rent(rows);
        var present = ArrayPool<long>.Shared.Rent(rows);
        var count = 0;
        for (var i = 0; i < rows; i++)
        {
            var value = valueOf(i);
            levels[i] = value is null ? 0 : 1;
            if (value is { } number)
                present[count++] = number;
        }

        pages.WriteLevels(levels.AsSpan(0, rows), 1);
        // Where there is no value, the plain form is empty and needs no head.
        if (count > 0)
            DeltaPacking.Write(pages.Data, present.AsSpan(0, count));
        ArrayPool<int>.Shared.Return(levels);
        ArrayPool<long>.Shared.Return(present);
        return pages.End(ParquetType.INT64, [definition.Name], rows, count > 0 ? Encoding.DELTA_BINARY_PACKED : Encoding.PLAIN, CompressionLevel);
    }

    private EncodedChunk Booleans(ColumnDefinition definition, bool?[] values)
    {
        var levels = ArrayPool<int>.Shared.Rent(values.Length);
        var bits = ArrayPool<byte>.Shared.Rent((values.Length / 8) + 1);
        bits.AsSpan().Clear();
        var count = 0;
        for (var i = 0; i < values.Length; i++)
        {
            levels[i] = values[i] is null ? 0 : 1;
            if (values[i] is not { } value)
                continue;
            bits[count / 8] |= (byte)(value ? 1 << (count % 8) : 0);
            count++;
        }

        pages.WriteLevels(levels.AsSpan(0, values.Length), 1);
        pages.Data.Write(bits.AsSpan(0, (count + 7) / 8));
        ArrayPool<int>.Shared.Return(levels);
        ArrayPool<byte>.Shared.Return(bits);
        return pages.End(ParquetType.BOOLEAN, [definition.Name], values.Length, Encoding.PLAIN, CompressionLevel);
    }

    /// <summary>Each text as the length of what it shares with the one before, and the rest: identifiers that count on hardly take any room.</summary>
    private EncodedChunk Texts(ColumnDefinition definition, string?[] values)
    {
        var levels = ArrayPool<int>.Shared.Rent(values.Length);
        var (shared, rests) = (ArrayPool<long>.Shared.Rent(values.Length), ArrayPool<long>.Shared.Rent(values.Length));
        var bytes = pages.Texts;
        bytes.ResetWrittenCount();
        byte[] text = [], before = [];
        var (count, lengthBefore) = (0, 0);
        for (var i = 0; i < values.Length; i++)
        {
            levels[i] = values[i] is null ? 0 : 1;
            if (values[i] is not { } value)
                continue;
            if (text.Length < Utf8.UTF8.GetMaxByteCount(value.Length))
                text = new byte[Utf8.UTF8.GetMaxByteCount(value.Length) * 2];
            var length = Utf8.UTF8.GetBytes(value, text);
            var same = text.AsSpan(0, length).CommonPrefixLength(before.AsSpan(0, lengthBefore));
            // Only ASCII is shared: the library that reads the files counts characters there where the format counts bytes.
            if (text.AsSpan(0, same).IndexOfAnyExceptInRange((byte)0, (byte)0x7F) is var other and >= 0)
                same = other;
            (shared[count], rests[count]) = (same, length - same);
            bytes.Write(text.AsSpan(same, length - same));
            (text, before, lengthBefore) = (before, text, length);
            count++;
        }

        pages.WriteLevels(levels.AsSpan(0, values.Length), 1);
        if (count > 0)
        {
            DeltaPacking.Write(pages.Data, shared.AsSpan(0, count));
            DeltaPacking.Write(pages.Data, rests.AsSpan(0, count));
            pages.Data.Write(bytes.WrittenSpan);
        }

        ArrayPool<int>.Shared.Return(levels);
        ArrayPool<long>.Shared.Return(shared);
        ArrayPool<long>.Shared.Return(rests);
        return pages.End(ParquetType.BYTE_ARRAY, [definition.Name], values.Length, count > 0 ? Encoding.DELTA_BYTE_ARRAY : Encoding.PLAIN, CompressionLevel);
    }

    /// <summary>Levels of a list: 0 no list, 1 an empty list, 2 a lost sample, 3 a sample.</summary>
    private EncodedChunk Lists(ColumnDefinition definition, double[]?[] lists)
    {
        var entries = lists.Sum(list => Math.Max(1, list?.Length ?? 0));
        var (levels, repetition, present) = (new int[entries], new int[entries], new double[entries]);
        int entry = 0, count = 0;
        foreach (var list in lists)
        {
            if (list is null or { Length: 0 })
            {
                levels[entry++] = list is null ? 0 : 1;
                continue;
            }

            for (var i = 0; i < list.Length; i++, entry++)
            {
                repetition[entry] = i == 0 ? 0 : 1;
                levels[entry] = double.IsNaN(list[i]) ? 2 : 3;
                if (!double.IsNaN(list[i]))
                    present[count++] = list[i];
            }
        }

        pages.WriteLevels(repetition, 1);
        pages.WriteLevels(levels, 2);
        pages.Data.Write(MemoryMarshal.AsBytes(present.AsSpan(0, count)));
        return pages.End(ParquetType.DOUBLE, [definition.Name, "list", ParquetShape.Element], entries, Encoding.PLAIN, CompressionLevel);
    }
}
