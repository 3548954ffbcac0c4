using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using SwingStudy.Ingestion.Mapping.Cells;

namespace SwingStudy.Ingestion.Tests.Mapping;

public sealed class NumberTextTests
{
    private static readonly Gen<string> PlainNumber =
        from sign in Gen.OneOf("", "-", "+")
        from whole in Gen.String[Gen.Char['0', '9'], 1, 24]
        from decimals in Gen.String[Gen.Char['0', '9'], 0, 24]
        from power in Gen.OneOf("", "", "", "e5", "E-7", "e+12")
        select sign + whole + (decimals.Length > 0 ? "." + decimals : "") + power;

    [Fact]
    public void EachNumberIsTheDoubleThatTheFrameworkReads() => PlainNumber.Sample(text =>
    {
        Assert.True(new NumberText('.', null).TryRead(text, out var value), text);
        Assert.Equal(double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture), value);
    }, iter: 20_000);

    /// <summary>Short texts of all kinds against the framework, which allows blanks and words that the pattern leaves out.</summary>
    [Fact]
    public void ShortTextsAreReadToTheLastBitOrRefused() => Gen.String[Gen.OneOf(Gen.Char['0', '9'], Gen.OneOf('0', '.', '.', '-', 'e', ',', ' ', 'é', '・')), 1, 10].Sample(text =>
    {
        var isNumber = Regex.IsMatch(text, @"\A-?([0-9]+\.?[0-9]*|\.[0-9]+)(e-?[0-9]+)?\z") && double.IsFinite(double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture));
        Assert.Equal(isNumber, new NumberText('.', null).TryRead(text, out var value));
        if (isNumber)
            Assert.Equal(BitConverter.DoubleToInt64Bits(double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture)), BitConverter.DoubleToInt64Bits(value));
    }, iter: 100_000);

    /// <summary>Numbers as devices write them, at each length of one word of eight characters and beside it.</summary>
    [Fact]
    public void FixedDecimalsAreReadToTheLastBit() => Gen.Select(Gen.Long[-9_999_999_999, 9_999_999_999], Gen.Int[0, 9], Gen.Int[0, 7]).Sample((digits, shift, decimals) =>
    {
        var text = ((decimal)(digits / (long)Math.Pow(10, shift)) / (decimal)Math.Pow(10, decimals)).ToString($"F{decimals}", CultureInfo.InvariantCulture);
        Assert.True(new NumberText('.', null).TryRead(text, out var value));
        Assert.Equal(BitConverter.DoubleToInt64Bits(double.Parse(text, CultureInfo.InvariantCulture)), BitConverter.DoubleToInt64Bits(value));
    }, iter: 100_000);

    [Fact]
    public void ADecimalCommaReadsAsADecimalPointDoes() => PlainNumber.Sample(text =>
    {
        new NumberText('.', null).TryRead(text, out var point);
        Assert.True(new NumberText(',', null).TryRead(text.Replace('.', ','), out var comma));
        Assert.Equal(point, comma);
    }, iter: 2_000);

    [Theory]
    [InlineData("55", 55)]
    [InlineData("5,5", 5.5)]
    [InlineData("-0,01", -0.01)]
    [InlineData("−3,5", -3.5)]
    [InlineData(",5", 0.5)]
    [InlineData("1.234.567,25", 1234567.25)]
    [InlineData("1.234", 1234)]
    public void WithADecimalCommaAndPointsBetweenThousands(string text, double expected)
    {
        Assert.True(new NumberText(',', '.').TryRead(text, out var value));
        Assert.Equal(expected, value);
    }

    [Theory]
    [InlineData("1.23,5")]
    [InlineData("12345.678,5")]
    [InlineData("1..234")]
    [InlineData("1,2,3")]
    [InlineData("1.2345")]
    public void ThousandsStandInGroupsOfThreeOrTheTextIsNoNumber(string text) => Assert.False(new NumberText(',', '.').TryRead(text, out _));

    [Theory]
    [InlineData("")]
    [InlineData("-")]
    [InlineData(".")]
    [InlineData("NaN")]
    [InlineData("Infinity")]
    [InlineData("1O2.4")]
    [InlineData("12..5")]
    [InlineData("5,5")]
    [InlineData("1e999")]
    [InlineData("12 5")]
    [InlineData("0x10")]
    [InlineData("1e")]
    public void WhatIsNoFiniteNumberInTheNotationIsRefused(string text) => Assert.False(new NumberText('.', null).TryRead(text, out _));

    [Theory]
    [InlineData("1 234,5")]
    [InlineData("1\u00A0234,5")]
    [InlineData("1\u202F234,5")]
    public void ADeclaredBlankBetweenThousandsStandsForAllBlanks(string text)
    {
        Assert.True(new NumberText(',', ' ').TryRead(text, out var value));
        Assert.Equal(1234.5, value);
    }
}
