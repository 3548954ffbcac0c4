using System.Buffers;
using SwingStudy.Storage.Tables.Columnar;

namespace SwingStudy.Storage.Tests.Tables.Columnar;

public class HybridRunsTests
{
    // Source: Apache Parquet, Encodings.md: the numbers 0 to 7 with 3 bits are 10001000 11000110 11111010; a header is groups * 2 + 1 or repeats * 2.
    [Theory]
    [InlineData("0 1 2 3 4 5 6 7", 3, "03 88 C6 FA")]
    [InlineData("4 4 4 4 4 4 4 4 4 4", 3, "14 04")]
    [InlineData("1 0 1", 1, "03 05")]
    [InlineData("0 1 2 3 4 5 6 7 300 300 300 300 300 300 300 300", 9, "03 00 02 08 18 40 A0 80 81 03 10 2C 01")]
    [InlineData("", 1, "")]
    public void RunsAreWrittenAsTheFormatSays(string values, int bits, string expected)
    {
        var bytes = new ArrayBufferWriter<byte>();
        HybridRuns.Write(bytes, [.. values.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(value => int.Parse(value, System.Globalization.CultureInfo.InvariantCulture))], bits);
        Assert.Equal(expected, string.Join(' ', bytes.WrittenSpan.ToArray().Select(value => value.ToString("X2", System.Globalization.CultureInfo.InvariantCulture))));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 1)]
    [InlineData(3, 2)]
    [InlineData(256, 8)]
    [InlineData(257, 9)]
    public void BitsHoldEveryPlace(int count, int bits) => Assert.Equal(bits, HybridRuns.BitsFor(count));
}
