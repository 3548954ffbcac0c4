using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Pipeline.Screen;

/// <summary>What screening knows of a variable. Ranges in its canonical unit.</summary>
/// <param name="Name">Name in the dictionary.</param>
/// <param name="Unit">UCUM code; null without unit.</param>
/// <param name="Minimum">Below this it is impossible; null where nothing is.</param>
/// <param name="Maximum">Above this it is impossible.</param>
/// <param name="TypicalLow">Below this it is not typical.</param>
/// <param name="TypicalHigh">Above this it is not typical.</param>
internal sealed record ScreenedVariable(string Name, string? Unit, double? Minimum, double? Maximum, double? TypicalLow, double? TypicalHigh)
{
    private static readonly string[] Confused =
        ["[mi_i]/h", "km/h", "m/s", "[ft_i]/s", "[kn_i]", "m", "[yd_i]", "[ft_i]", "[in_i]", "cm", "mm", "rad", "deg", "N", "[lbf_av]", "kg", "[lb_av]"];

    /// <summary>Units in which a device might have written the variable by mistake, and the factor by which its values then differ.</summary>
    public IReadOnlyList<(string Code, double Factor)> UnitFactors()
    {
        if (Unit is null || UnitCatalogue.ParseCode(Unit) is not { } own)
            return [];
        return [.. Confused.Select(code => (Code: code, Factor: UnitConversion.Between(own, UnitCatalogue.ParseCode(code)!)?.Factor ?? 1))
            .Where(pair => pair.Code != Unit && Math.Abs(pair.Factor - 1) > 0.05)];
    }

    public static ScreenedVariable Of(Variable variable) => new(
        variable.Name, variable.Unit, variable.Minimum, variable.Maximum, variable.Typical?.Low, variable.Typical?.High);
}
