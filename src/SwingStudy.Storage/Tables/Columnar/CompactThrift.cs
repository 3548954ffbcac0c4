using System.Buffers;
using System.Text;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Writes structures in Thrift's compact protocol, as a Parquet footer needs it. Fields of a structure in ascending order.</summary>
/// <remarks>Source: Apache Thrift, "Thrift Compact protocol encoding".</remarks>
internal sealed class CompactThrift
{
    private const int True = 1, False = 2, Small = 4, Int = 5, Long = 6, Binary = 8, List = 9, Struct = 12;
    private const int LongestShortList = 14;
    private readonly ArrayBufferWriter<byte> _bytes = new();
    private readonly Stack<int> _outer = new();
    private int _last;

    /// <summary>What was written.</summary>
    internal byte[] ToArray() => _bytes.WrittenSpan.ToArray();

    internal void WriteBoolean(int field, bool value) => Header(field, value ? True : False);

    internal void WriteShort(int field, short value)
    {
        Header(field, Small);
        ZigZag(value);
    }

    internal void WriteInt(int field, int value)
    {
        Header(field, Int);
        ZigZag(value);
    }

    internal void WriteLong(int field, long value)
    {
        Header(field, Long);
        ZigZag(value);
    }

    internal void WriteText(int field, string value) => WriteBinary(field, Encoding.UTF8.GetBytes(value));

    internal void WriteBinary(int field, ReadOnlySpan<byte> value)
    {
        Header(field, Binary);
        Bytes(value);
    }

    internal void WriteInts(int field, IReadOnlyList<int> values)
    {
        ListHeader(field, values.Count, Int);
        foreach (var value in values)
            ZigZag(value);
    }

    internal void WriteTexts(int field, IReadOnlyList<string> values)
    {
        ListHeader(field, values.Count, Binary);
        foreach (var value in values)
            Bytes(Encoding.UTF8.GetBytes(value));
    }

    internal void WriteStructs<T>(int field, IReadOnlyList<T> values, Action<T> write)
    {
        ListHeader(field, values.Count, Struct);
        foreach (var value in values)
            Nested(() => write(value));
    }

    internal void WriteStruct(int field, Action write)
    {
        Header(field, Struct);
        Nested(write);
    }

    /// <summary>Ends the outermost structure.</summary>
    internal void End() => Byte(0);

    private void Nested(Action write)
    {
        _outer.Push(_last);
        _last = 0;
        write();
        End();
        _last = _outer.Pop();
    }

    private void ListHeader(int field, int count, int kind)
    {
        Header(field, List);
        if (count <= LongestShortList)
        {
            Byte((byte)((count << 4) | kind));
            return;
        }

        Byte((byte)(0xF0 | kind));
        VarInt((ulong)count);
    }

    private void Header(int field, int kind)
    {
        var step = field - _last;
        if (step is < 1 or > 15)
            throw new InvalidOperationException($"Field {field} cannot follow field {_last}.");
        Byte((byte)((step << 4) | kind));
        _last = field;
    }

    private void Bytes(ReadOnlySpan<byte> value)
    {
        VarInt((ulong)value.Length);
        _bytes.Write(value);
    }

    private void Byte(byte value)
    {
        _bytes.GetSpan(1)[0] = value;
        _bytes.Advance(1);
    }

    private void ZigZag(long value) => VarInt((ulong)((value << 1) ^ (value >> 63)));

    private void VarInt(ulong value)
    {
        for (; value >= 0x80; value >>= 7)
            Byte((byte)(value | 0x80));
        Byte((byte)value);
    }
}
