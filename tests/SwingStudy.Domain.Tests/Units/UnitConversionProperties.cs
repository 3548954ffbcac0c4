using CsCheck;
using SwingStudy.Domain.Units;

namespace SwingStudy.Domain.Tests.Units;

public sealed class UnitConversionProperties
{
    private static readonly Unit[] Units = [.. CustomaryNames.Codes.Values
        .Distinct(StringComparer.Ordinal)
        .Order(StringComparer.Ordinal)
        .Select(code => UnitCatalogue.ParseCode(code)!)];

    private static readonly Gen<Unit> AnyUnit = Gen.Int[0, Units.Length - 1].Select(position => Units[position]);

    [Fact]
    public void ThereAndBackIsTheSameValue() => Gen.Select(AnyUnit, AnyUnit, Gen.Double[-1e6, 1e6]).Sample((from, to, value) =>
    {
        if (UnitConversion.Between(from, to) is not { } there)
            return;
        var back = UnitConversion.Between(to, from)!.Value;
        Assert.Equal(value, back.Apply(there.Apply(value)), Math.Max(1e-6 * Math.Abs(back.Factor), 1e-9 * Math.Abs(value)));
    });

    [Fact]
    public void UnitsConvertExactlyWhenNoMismatchIsTold() => Gen.Select(AnyUnit, AnyUnit).Sample((from, to) =>
        Assert.Equal(UnitConversion.Between(from, to) is null, from.MismatchWith(to) is not null));

    [Fact]
    public void ATripOverAThirdUnitChangesNothing() => Gen.Select(AnyUnit, AnyUnit, AnyUnit, Gen.Double[-1e3, 1e3]).Sample((a, b, c, value) =>
    {
        if (UnitConversion.Between(a, b) is not { } first || UnitConversion.Between(b, c) is not { } second)
            return;
        var direct = UnitConversion.Between(a, c)!.Value.Apply(value);
        Assert.Equal(direct, second.Apply(first.Apply(value)), 1e-9 * Math.Max(Math.Abs(direct), Math.Abs(second.Factor) * 1e3));
    });
}
