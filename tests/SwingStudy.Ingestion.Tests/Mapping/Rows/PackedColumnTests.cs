using CsCheck;
using SwingStudy.Ingestion.Mapping.Rows;

namespace SwingStudy.Ingestion.Tests.Mapping.Rows;

/// <summary>Packing changes the room that values take and nothing else, whether they repeat often, seldom or never.</summary>
public class PackedColumnTests
{
    private static readonly PackingScratch Scratch = new();

    [Fact]
    public void NumbersComeBackBitForBit() =>
        (from count in Gen.Int[0, 1500]
         from distinct in Gen.Int[1, 2000]
         from values in Gen.Int[0, distinct].Array[count]
         from left in Gen.Int[1, 5]
         select (Values: values.Select(value => value % 19 == 4 ? double.NaN : value % 23 == 1 ? -0.0 : value / 7.0).ToArray(), Left: left)).Sample(
            sample =>
            {
                var rows = Enumerable.Range(0, sample.Values.Length).Where(row => row % 5 < sample.Left).ToArray();
                var expected = Array.ConvertAll(rows, row => sample.Values[row]);
                var packed = PackedNumbers.Of(sample.Values, rows, new PackingScratch());
                var picked = new double[rows.Length];
                packed.Pick([.. Enumerable.Range(0, rows.Length)], picked);
                Assert.Equal(Bits(expected), Bits([.. Enumerable.Range(0, rows.Length).Select(row => packed[row])]));
                Assert.Equal(Bits(expected), Bits(picked));
                Assert.Equal(Array.Exists(expected, double.IsFinite), packed.HasAny);
            },
            iter: 100);

    [Fact]
    public void TextsComeBack() =>
        (from count in Gen.Int[0, 1500]
         from distinct in Gen.Int[1, 2000]
         from values in Gen.Int[0, distinct].Array[count]
         select values).Sample(
            values =>
            {
                var texts = values.Select(value => value % 19 == 4 ? null : string.Intern($"text {value}")).ToArray();
                int[] rows = [.. Enumerable.Range(0, texts.Length).Where(row => row % 3 != 1)];
                var packed = PackedTexts.Of(texts, rows, new PackingScratch());
                Assert.Equal(rows.Select(row => texts[row]), Enumerable.Range(0, rows.Length).Select(row => packed[row]));
                Assert.Equal(rows.Any(row => texts[row] is not null), packed.HasAny);
            },
            iter: 100);

    [Fact]
    public void MeasuredValuesTakeAFourthOfTheirRoom()
    {
        var values = Enumerable.Range(0, 8000).Select(row => Math.Round(40 + (5 * Math.Sin(row)), 1)).ToArray();
        int[] rows = [.. Enumerable.Range(0, values.Length)];
        var before = GC.GetAllocatedBytesForCurrentThread();
        var packed = PackedNumbers.Of(values, rows, Scratch);
        before = GC.GetAllocatedBytesForCurrentThread();
        packed = PackedNumbers.Of(values, rows, Scratch);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, values.Length, values.Length * 2);
        Assert.Equal(values[77], packed[77]);
    }

    private static long[] Bits(double[] values) => Array.ConvertAll(values, BitConverter.DoubleToInt64Bits);
}
