using CsCheck;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Recordings;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Recordings;

/// <summary>Cells of samples, many at a time and one by one.</summary>
public sealed class SampleColumnTests
{
    private static readonly Gen<string> FixedDecimals =
        from sign in Gen.OneOf("", "", "-", "+", "- ")
        from whole in Gen.String[Gen.Char['0', '9'], 0, 6]
        from decimals in Gen.String[Gen.Char['0', '9'], 3, 3]
        select $"{sign}{whole}.{decimals}";

    private static readonly Gen<string> Anything = Gen.String[Gen.OneOf(Gen.Char['0', '9'], Gen.OneOf('.', ',', '-', '/', '*', '(', ':', ' ', 'e', 'é', '・', '\u00AE', '\u2212')), 0, 10];

    private static readonly Gen<string> Cell =
        Gen.Frequency((12, FixedDecimals), (2, Gen.Int[-99_999, 99_999_999].Select(number => $"{number}")), (1, Gen.OneOf("", " ", "NaN", "nan", "\"1.250\"", "\"a\"\"b\"", "0.000", "-0.000", " 1.250", "12345.678901")), (1, Anything));

    /// <summary>Columns that start alike and go on as they like, in blocks of any length; each cell must come out as it does alone.</summary>
    [Fact]
    public void ManyRowsGiveTheValuesAndRejectsOfEachRowAlone() => Gen.Select(Gen.OneOf(FixedDecimals.Array[1, 40], Cell.Array[1, 40]), Gen.OneOf('.', ','), Gen.Bool).Sample((cells, decimalSign, hasNumericToken) =>
    {
        var column = Column(decimalSign, hasNumericToken ? ["NaN", "0.000"] : ["NaN"]);
        using var document = Document(cells);
        var block = Assert.Single(document.Blocks());
        using (block)
        {
            var (together, rejected) = (new double[block.RowCount], new List<MappedReject>());
            column.Read(block, 0, together, rejected);
            var (alone, rejects) = (new double[block.RowCount], new List<MappedReject>());
            for (var row = 0; row < alone.Length; row++)
                column.Read(block, row, alone.AsSpan(row, 1), rejects);
            Assert.Equal(alone.Select(BitConverter.DoubleToInt64Bits), together.Select(BitConverter.DoubleToInt64Bits));
            Assert.Equal(rejects, rejected);
        }
    }, iter: 3_000);

    /// <summary>One by one, a cell is what its text says: the framework's number, times the factor, or missing, or a reject.</summary>
    [Fact]
    public void FixedDecimalsAreReadToTheLastBit() => Gen.Select(Gen.Int[-99_999_999, 99_999_999].Array[1, 60], Gen.Int[0, 7]).Sample((numbers, decimals) =>
    {
        string[] cells = [.. numbers.Select(number => ((decimal)number / (decimal)Math.Pow(10, decimals)).ToString($"F{decimals}", System.Globalization.CultureInfo.InvariantCulture))];
        using var document = Document(cells);
        using var block = Assert.Single(document.Blocks());
        var values = new double[block.RowCount];
        Column('.', []).Read(block, 0, values, []);
        Assert.Equal(cells.Select(cell => double.Parse(cell, System.Globalization.CultureInfo.InvariantCulture) * 2 + 0.0), values);
    }, iter: 3_000);

    /// <summary>Signs that differ from a decimal sign in the lowest bits alone are no decimal signs, and a short cell has none.</summary>
    [Theory]
    [InlineData("1/250")]
    [InlineData("1,250")]
    [InlineData("1*250")]
    [InlineData("1-250")]
    [InlineData("-")]
    [InlineData(".")]
    public void WhatStandsInThePlaceOfTheDecimalSignIsOne(string odd)
    {
        using var document = Document([.. Enumerable.Repeat("1.250", 6), odd, "5", ".5", "1.250"]);
        using var block = Assert.Single(document.Blocks());
        var (values, rejects) = (new double[10], new List<MappedReject>());
        Column('.', []).Read(block, 0, values, rejects);
        Assert.Equal([2.5, 2.5, 2.5, 2.5, 2.5, 2.5, double.NaN, 10, 1, 2.5], values);
        Assert.Equal((odd, 8), (Assert.Single(rejects).Raw, rejects[0].Line));
    }

    private static SampleColumn Column(char decimalSign, string[] missing) =>
        new("lead_force_y", "N", 1, "Fz", new NumberText(decimalSign, null), new LinearScale(2, 0), new MissingTokens(missing, []));

    private static RecordDocument Document(IEnumerable<string> cells)
    {
        var text = "t;Fz;x\n" + string.Concat(cells.Select(cell => $"0;{cell};0\n"));
        var outcome = RecordReaders.Open(Some.Stream(text), "a.txt", SomeRecording.Mapping with { Time = new TimeRule { Parts = [new FieldSource { Constant = "-" }] }, Participant = null });
        Assert.True(outcome.Succeeded(out var document), string.Join(Environment.NewLine, outcome.Problems));
        return document;
    }
}
