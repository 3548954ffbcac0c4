using System.Buffers;
using System.Globalization;
using CsCheck;
using SwingStudy.Storage.Tables.Columnar;

namespace SwingStudy.Storage.Tests.Tables.Columnar;

public class DeltaPackingTests
{
    // Source: the two examples of Apache Parquet, Encodings.md, "Delta Encoding", with blocks of 128 numbers in 4 runs in place of theirs:
    // head (block size, runs, count, first number), then least difference, width of each run, and the first run filled up to 32 numbers.
    [Theory]
    [InlineData("1 2 3 4 5", "80 01 04 05 02 02 00 00 00 00")]
    [InlineData("7 5 3 1 2 3 4 5", "80 01 04 08 0E 03 02 00 00 00 C0 3F 00 00 00 00 00 00")]
    [InlineData("42", "80 01 04 01 54")]
    [InlineData("", "80 01 04 00 00")]
    public void NumbersAreWrittenAsTheFormatSays(string values, string expected)
    {
        var written = Written([.. values.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(value => long.Parse(value, CultureInfo.InvariantCulture))]);
        Assert.Equal(expected, string.Join(' ', written.Select(value => value.ToString("X2", CultureInfo.InvariantCulture))));
    }

    [Fact]
    public void EveryNumberComesBack() =>
        (from count in Gen.Int[0, 400]
         from wild in Gen.Bool
         from values in (wild ? Gen.Long : Gen.Long[1_790_000_000_000, 1_790_000_900_000]).Array[count]
         select values).Sample(values => Assert.Equal(values, Read(Written(values))), iter: 300);

    [Fact]
    public void DifferencesWrapAround()
    {
        long[] values = [long.MinValue, long.MaxValue, 0, long.MaxValue, long.MinValue, -1];
        Assert.Equal(values, Read(Written(values)));
    }

    [Fact]
    public void NumbersThatCountOnTakeNoBits()
    {
        var values = Enumerable.Range(1, 8192).Select(value => (long)value).ToArray();
        Assert.Equal(6 + (64 * 5), Written(values).Length);
    }

    private static byte[] Written(long[] values)
    {
        var bytes = new ArrayBufferWriter<byte>();
        DeltaPacking.Write(bytes, values);
        return bytes.WrittenSpan.ToArray();
    }

    /// <summary>Reads by the words of the format: any block size, any number of runs, runs behind the last number left out.</summary>
    private static long[] Read(byte[] bytes)
    {
        var at = 0;
        var (blockSize, runs, count) = ((int)VarInt(bytes, ref at), (int)VarInt(bytes, ref at), (int)VarInt(bytes, ref at));
        var values = new List<long> { ZigZag(VarInt(bytes, ref at)) };
        while (values.Count < count)
        {
            var least = ZigZag(VarInt(bytes, ref at));
            var widths = bytes[at..(at += runs)];
            foreach (var width in widths)
            {
                for (var i = 0; i < blockSize / runs && values.Count < count; i++)
                {
                    ulong difference = 0;
                    for (var bit = 0; bit < width; bit++)
                        difference |= (ulong)((bytes[at + (((i * width) + bit) / 8)] >> (((i * width) + bit) % 8)) & 1) << bit;
                    values.Add(unchecked(values[^1] + least + (long)difference));
                }

                at += blockSize / runs * width / 8;
            }
        }

        return count == 0 ? [] : [.. values];
    }

    private static ulong VarInt(byte[] bytes, ref int at)
    {
        ulong value = 0;
        for (var shift = 0; ; shift += 7)
        {
            value |= (ulong)(bytes[at] & 0x7F) << shift;
            if (bytes[at++] < 0x80)
                return value;
        }
    }

    private static long ZigZag(ulong value) => (long)(value >> 1) ^ -(long)(value & 1);
}
