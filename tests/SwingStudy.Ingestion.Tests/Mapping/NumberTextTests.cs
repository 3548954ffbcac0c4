using System.Globalization;
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
