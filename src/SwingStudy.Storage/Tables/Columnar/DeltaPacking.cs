using System.Buffers;
using System.Buffers.Binary;
using System.Numerics;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Whole numbers as differences from one to the next, packed in as few bits as each run of 32 needs.</summary>
/// <remarks>Source: Apache Parquet, Encodings.md, "Delta Encoding (DELTA_BINARY_PACKED = 5)". Sums and differences wrap around, as the format asks.</remarks>
internal static class DeltaPacking
{
    private const int BlockValues = 128, MiniBlocks = 4, MiniBlockValues = BlockValues / MiniBlocks;

    /// <summary>Writes all numbers.</summary>
    internal static void Write(ArrayBufferWriter<byte> bytes, ReadOnlySpan<long> values)
    {
        VarInt(bytes, BlockValues);
        VarInt(bytes, MiniBlocks);
        VarInt(bytes, (ulong)values.Length);
        VarInt(bytes, ZigZag(values.IsEmpty ? 0 : values[0]));
        Span<ulong> deltas = stackalloc ulong[BlockValues];
        for (var from = 1; from < values.Length; from += BlockValues)
        {
            var count = Math.Min(BlockValues, values.Length - from);
            var least = long.MaxValue;
            for (var i = 0; i < count; i++)
            {
                var delta = unchecked(values[from + i] - values[from + i - 1]);
                deltas[i] = (ulong)delta;
                least = Math.Min(least, delta);
            }

            for (var i = 0; i < count; i++)
                deltas[i] = unchecked(deltas[i] - (ulong)least);
            deltas[count..].Clear();
            VarInt(bytes, ZigZag(least));
            WriteMiniBlocks(bytes, deltas);
        }
    }

    private static void WriteMiniBlocks(ArrayBufferWriter<byte> bytes, ReadOnlySpan<ulong> deltas)
    {
        var widths = bytes.GetSpan(MiniBlocks)[..MiniBlocks];
        Span<int> bits = stackalloc int[MiniBlocks];
        for (var block = 0; block < MiniBlocks; block++)
        {
            ulong any = 0;
            foreach (var delta in deltas.Slice(block * MiniBlockValues, MiniBlockValues))
                any |= delta;
            bits[block] = 64 - BitOperations.LeadingZeroCount(any);
            widths[block] = (byte)bits[block];
        }

        bytes.Advance(MiniBlocks);
        // A run of no bits takes no bytes; so do the runs behind the last value.
        for (var block = 0; block < MiniBlocks; block++)
            Pack(bytes, deltas.Slice(block * MiniBlockValues, MiniBlockValues), bits[block]);
    }

    private static void Pack(ArrayBufferWriter<byte> bytes, ReadOnlySpan<ulong> values, int bits)
    {
        if (bits == 0)
            return;
        var size = MiniBlockValues * bits / 8;
        var target = bytes.GetSpan(size + sizeof(ulong));
        var at = 0;
        ulong held = 0;
        var count = 0;
        foreach (var value in values)
        {
            held |= value << count;
            count += bits;
            if (count < 64)
                continue;
            BinaryPrimitives.WriteUInt64LittleEndian(target[at..], held);
            at += sizeof(ulong);
            count -= 64;
            held = count == 0 ? 0 : value >> (bits - count);
        }

        BinaryPrimitives.WriteUInt64LittleEndian(target[at..], held);
        bytes.Advance(size);
    }

    private static ulong ZigZag(long value) => (ulong)((value << 1) ^ (value >> 63));

    private static void VarInt(ArrayBufferWriter<byte> bytes, ulong value)
    {
        var target = bytes.GetSpan(10);
        var count = 0;
        for (; value >= 0x80; value >>= 7)
            target[count++] = (byte)(value | 0x80);
        target[count++] = (byte)value;
        bytes.Advance(count);
    }
}
