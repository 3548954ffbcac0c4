using System.Buffers;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Small whole numbers as Parquet's mix of repeated values and bit-packed groups of eight.</summary>
/// <remarks>Source: Apache Parquet, Encodings.md, "Run Length Encoding / Bit-Packing Hybrid (RLE = 3)".</remarks>
internal static class HybridRuns
{
    private const int Group = 8;

    /// <summary>Bits that hold every index into <paramref name="count"/> entries; at least one.</summary>
    internal static int BitsFor(int count) => Math.Max(1, 32 - System.Numerics.BitOperations.LeadingZeroCount((uint)Math.Max(1, count - 1)));

    /// <summary>Writes the runs, without a length before them.</summary>
    internal static void Write(ArrayBufferWriter<byte> bytes, ReadOnlySpan<int> values, int bits)
    {
        var packed = 0;
        var next = 0;
        while (next < values.Length)
        {
            var repeats = Repeats(values[next..]);
            if (repeats < Group)
            {
                next = Math.Min(next + Group, values.Length);
                continue;
            }

            Pack(bytes, values[packed..next], bits);
            VarInt(bytes, (uint)repeats << 1);
            Fixed(bytes, values[next], (bits + 7) / 8);
            packed = next += repeats;
        }

        Pack(bytes, values[packed..], bits);
    }

    private static int Repeats(ReadOnlySpan<int> values)
    {
        var other = values.IndexOfAnyExcept(values[0]);
        return other < 0 ? values.Length : other;
    }

    private static void Pack(ArrayBufferWriter<byte> bytes, ReadOnlySpan<int> values, int bits)
    {
        if (values.IsEmpty)
            return;
        var groups = (values.Length + Group - 1) / Group;
        VarInt(bytes, ((uint)groups << 1) | 1);
        var size = groups * bits;
        var target = bytes.GetSpan(size);
        var at = 0;
        ulong held = 0;
        var count = 0;
        foreach (var value in values)
        {
            held |= (ulong)(uint)value << count;
            for (count += bits; count >= 8; count -= 8, held >>= 8)
                target[at++] = (byte)held;
        }

        if (count > 0)
            target[at++] = (byte)held;
        target[at..size].Clear();
        bytes.Advance(size);
    }

    private static void Fixed(ArrayBufferWriter<byte> bytes, int value, int size)
    {
        var target = bytes.GetSpan(size);
        for (var i = 0; i < size; i++)
            target[i] = (byte)(value >> (8 * i));
        bytes.Advance(size);
    }

    private static void VarInt(ArrayBufferWriter<byte> bytes, uint value)
    {
        var target = bytes.GetSpan(5);
        var count = 0;
        for (; value >= 0x80; value >>= 7)
            target[count++] = (byte)(value | 0x80);
        target[count++] = (byte)value;
        bytes.Advance(count);
    }
}
