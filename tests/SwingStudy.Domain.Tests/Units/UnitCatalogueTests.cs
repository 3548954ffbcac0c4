using SwingStudy.Domain.Units;

namespace SwingStudy.Domain.Tests.Units;

public sealed class UnitCatalogueTests
{
    // NIST Special Publication 811 (2008), appendix B.8: factors printed there in bold are exact.
    [Theory]
    [InlineData("mph", "m/s", 0.44704)]
    [InlineData("km/h", "m/s", 1 / 3.6)]
    [InlineData("ft/s", "m/s", 0.3048)]
    [InlineData("yd", "m", 0.9144)]
    [InlineData("ft", "m", 0.3048)]
    [InlineData("in", "mm", 25.4)]
    [InlineData("mi", "m", 1609.344)]
    [InlineData("lb", "kg", 0.45359237)]
    [InlineData("oz", "g", 28.349523125)]
    [InlineData("lbf", "N", 4.4482216152605)]
    [InlineData("kgf", "N", 9.80665)]
    [InlineData("ft-lbf", "N.m", 1.3558179483314)]
    [InlineData("psi", "kPa", 6.894757293168)]
    [InlineData("knots", "m/s", 0.514444444444444)]
    [InlineData("gon", "deg", 0.9)]
    [InlineData("rad", "deg", 57.295779513082)]
    [InlineData("atm", "hPa", 1013.25)]
    [InlineData("mbar", "hPa", 1)]
    [InlineData("rpm", "deg/s", 6)]
    public void FactorsAreThePublishedOnes(string from, string to, double factor)
    {
        var conversion = UnitConversion.Between(Known(from is "psi" ? "[psi]" : from), Known(to));

        Assert.NotNull(conversion);
        Assert.Equal(0, conversion.Value.Offset);
        Assert.Equal(1, conversion.Value.Factor / factor, 1e-12);
    }

    // UCUM 2.2, table 'other units': m[Hg] is 133.3220 kPa, so an inch of mercury is 3386.3788 Pa; SP 811 rounds another way to 3386.389.
    [Fact]
    public void AnInchOfMercuryIsTheOneOfTheCodeStandard() =>
        Assert.Equal(33.863788, UnitConversion.Between(Known("inHg"), Known("hPa"))!.Value.Factor, 1e-9);

    // NIST SP 811, appendix B.8: t/°C = (t/°F - 32)/1.8. Boiling and freezing point of water, and the point where both scales meet.
    [Theory]
    [InlineData("°F", "°C", 212, 100)]
    [InlineData("°F", "°C", 32, 0)]
    [InlineData("°F", "°C", -40, -40)]
    [InlineData("°C", "K", 20, 293.15)]
    public void TemperatureScalesShiftTheirZero(string from, string to, double value, double expected)
    {
        var conversion = UnitConversion.Between(Known(from), Known(to))!.Value;

        Assert.Equal(expected, conversion.Apply(value), 1e-9);
    }

    [Fact]
    public void ADifferenceOfTemperaturesHasNoZeroToShift() =>
        Assert.Equal(10, UnitConversion.Between(Known("°F"), Known("°C"))!.Value.ApplyToDifference(18), 1e-12);

    [Theory]
    [InlineData("[mph]", "[mi_i]/h")]
    [InlineData("(deg)", "deg")]
    [InlineData("[°]", "deg")]
    [InlineData(" °/s ", "deg/s")]
    [InlineData("RPM", "{rev}/min")]
    [InlineData("[-]", "1")]
    [InlineData("Nm", "N.m")]
    [InlineData("N·mm", "N.mm")]
    [InlineData("m/s²", "m/s2")]
    [InlineData("m/s^2", "m/s2")]
    [InlineData("lbs", "[lb_av]")]
    [InlineData("µs", "us")]
    [InlineData("BW", "{BW}")]
    public void HeadingsWriteUnitsInManyWays(string text, string code) => Assert.Equal(code, Known(text).Code);

    [Theory]
    [InlineData("")]
    [InlineData("furlong")]
    [InlineData("mm/")]
    [InlineData("(m/s")]
    [InlineData("Cel/min")]
    [InlineData("S")]
    [InlineData("C")]
    [InlineData("m//s")]
    public void WhatIsNoUnitIsNotGuessed(string text) => Assert.Null(UnitCatalogue.Parse(text));

    [Fact]
    public void CodesAreCaseSensitiveSoMegaAndMilliStayApart()
    {
        Assert.Equal(1e6, Known("MN").Factor);
        Assert.Equal(1e-3, Known("mN").Factor);
        Assert.Null(UnitCatalogue.ParseCode("MPH"));
    }

    [Fact]
    public void BodyWeightsAndNewtonsNeverConvertByThemselves()
    {
        Assert.Null(UnitConversion.Between(Known("N"), Known("{BW}")));
        var mismatch = Known("N").MismatchWith(Known("{BW}"));
        Assert.Equal(
            "'N' measures force, '{BW}' measures multiple of body weight; body weights and units of force convert only through the player's measured body_weight",
            mismatch);
    }

    [Fact]
    public void AMismatchNamesBothDimensions() =>
        Assert.Equal("'[mi_i]/h' measures speed, '[yd_i]' measures length", Known("mph").MismatchWith(Known("yd")));

    [Fact]
    public void DegreesAreNoPlainNumbers() => Assert.Null(UnitConversion.Between(Known("deg"), Known("1")));

    [Fact]
    public void AnAnnotationWithoutMeaningLeavesThePlainNumber() =>
        Assert.Equal(new UnitConversion(1, 0), UnitConversion.Between(Known("{swings}"), Known("1")));

    [Fact]
    public void NoCustomaryNameIsACodeOfItsOwnAndEachNamesAKnownCode()
    {
        foreach (var (name, code) in CustomaryNames.Codes)
        {
            Assert.True(UnitCatalogue.ParseCode(name) is null, $"'{name}' is a UCUM code already: it would have two meanings.");
            Assert.True(UnitCatalogue.ParseCode(code) is not null, $"'{name}' stands for '{code}', which is not in the catalogue.");
        }
    }

    private static Unit Known(string text) => UnitCatalogue.Parse(text) ?? throw new InvalidOperationException($"'{text}' is not known.");
}
