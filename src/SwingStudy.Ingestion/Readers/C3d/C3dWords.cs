using System.Buffers.Binary;
using System.Numerics;

namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>Reads and writes single integers and reals in a byte order.</summary>
internal static class C3dWords
{
    /// <summary>An unsigned 16-bit integer.</summary>
    public static ushort UInt16(ReadOnlySpan<byte> bytes, C3dByteOrder order) =>
        order == C3dByteOrder.Sgi ? BinaryPrimitives.ReadUInt16BigEndian(bytes) : BinaryPrimitives.ReadUInt16LittleEndian(bytes);

    /// <summary>A real.</summary>
    public static float Real(ReadOnlySpan<byte> bytes, C3dByteOrder order) => order switch
    {
        C3dByteOrder.Sgi => BinaryPrimitives.ReadSingleBigEndian(bytes),
        C3dByteOrder.Dec => (float)FromDec(BinaryPrimitives.ReadUInt32LittleEndian(bytes)),
        _ => BinaryPrimitives.ReadSingleLittleEndian(bytes),
    };

    /// <summary>A VAX F real whose four bytes are read as a little-endian number: words swapped and read as IEEE it is four times too large.</summary>
    /// <remarks>Exponent 0 is zero; the largest exponent, which IEEE would read as infinite, is scaled apart. Source: C3D format user guide, c3d.org.</remarks>
    public static double FromDec(uint bytes)
    {
        var bits = (bytes << 16) | (bytes >> 16);
        return ((bits >> 23) & 0xFF) switch
        {
            0 => 0,
            255 => BitConverter.UInt32BitsToSingle(bits - (1u << 23)) * 0.5,
            _ => BitConverter.UInt32BitsToSingle(bits) * 0.25,
        };
    }

    /// <summary>Many VAX F reals, several at a time.</summary>
    public static void FromDec(ReadOnlySpan<uint> bytes, Span<float> values)
    {
        var (at, largest) = (0, new Vector<uint>(255));
        for (; at + Vector<uint>.Count <= bytes.Length; at += Vector<uint>.Count)
        {
            var read = new Vector<uint>(bytes[at..]);
            var bits = Vector.ShiftLeft(read, 16) | Vector.ShiftRightLogical(read, 16);
            var exponent = Vector.ShiftRightLogical(bits, 23) & largest;
            if (Vector.EqualsAny(exponent, largest))
                OneByOne(bytes.Slice(at, Vector<uint>.Count), values[at..]);
            else
                Vector.ConditionalSelect(Vector.AsVectorSingle(Vector.Equals(exponent, Vector<uint>.Zero)), Vector<float>.Zero, Vector.AsVectorSingle(bits) * 0.25f).CopyTo(values[at..]);
        }

        OneByOne(bytes[at..], values[at..]);
    }

    /// <summary>A number as a VAX F real, rounded to its 24 bits; beyond its range the largest.</summary>
    public static uint ToDec(float value)
    {
        if (value == 0 || !float.IsFinite(value))
            return 0;
        // The exponent of a VAX real is two above that of IEEE: 4 x value, without the overflow of the largest numbers.
        var bits = BitConverter.SingleToUInt32Bits(value);
        var exponent = ((bits >> 23) & 0xFF) + 2;
        if (exponent > 255)
            bits = (bits & 0x8000_0000) | 0x7FFF_FFFF;
        else if (exponent > 2)
            bits += 2u << 23;
        else
            bits = BitConverter.SingleToUInt32Bits(value * 4) is var small && ((small >> 23) & 0xFF) > 0 ? small : 0;
        return (bits << 16) | (bits >> 16);
    }

    private static void OneByOne(ReadOnlySpan<uint> bytes, Span<float> values)
    {
        for (var i = 0; i < bytes.Length; i++)
            values[i] = (float)FromDec(bytes[i]);
    }

    /// <summary>Writes an unsigned 16-bit integer.</summary>
    public static void Write(Span<byte> bytes, ushort value, C3dByteOrder order)
    {
        if (order == C3dByteOrder.Sgi)
            BinaryPrimitives.WriteUInt16BigEndian(bytes, value);
        else
            BinaryPrimitives.WriteUInt16LittleEndian(bytes, value);
    }

    /// <summary>Writes a real.</summary>
    public static void Write(Span<byte> bytes, float value, C3dByteOrder order)
    {
        if (order == C3dByteOrder.Sgi)
            BinaryPrimitives.WriteSingleBigEndian(bytes, value);
        else if (order == C3dByteOrder.Dec)
            BinaryPrimitives.WriteUInt32LittleEndian(bytes, ToDec(value));
        else
            BinaryPrimitives.WriteSingleLittleEndian(bytes, value);
    }
}
