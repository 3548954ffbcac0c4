using System.Globalization;
using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Reporting.Figures;

/// <summary>Numbers of one variable as people read them: in its display unit, rounded alike, with a true minus sign.</summary>
public sealed class ValueDisplay
{
    private readonly UnitConversion _conversion;
    private readonly Unit? _shown;

    /// <summary>How a variable is shown.</summary>
    public ValueDisplay(Variable variable)
    {
        Title = variable.Title;
        var unit = variable.Unit is { } code ? UnitCatalogue.ParseCode(code) : null;
        _shown = variable.ShownUnit is { } shown ? UnitCatalogue.ParseCode(shown) : null;
        _conversion = unit is not null && _shown is not null ? UnitConversion.Between(unit, _shown) ?? UnitConversion.None : UnitConversion.None;
        var size = Math.Abs(_conversion.Apply(variable.Typical?.High ?? variable.Maximum ?? 10));
        Decimals = size >= 1000 ? 0 : size >= 10 ? 1 : size >= 2 ? 2 : 3;
    }

    /// <summary>What a person calls the variable.</summary>
    public string Title { get; }

    /// <summary>Decimals that are shown.</summary>
    public int Decimals { get; }

    /// <summary>Sign of the unit; empty for plain numbers.</summary>
    public string Symbol => _shown?.Symbol ?? "";

    /// <summary>Decimals of a number whose uncertainty is known, display unit: two digits of the uncertainty are shown.</summary>
    public int DecimalsFor(double uncertainty) => Digits.DecimalsFor(uncertainty, Decimals);

    /// <summary>Title with unit, for an axis or a table's head.</summary>
    public string Label => LabelOf(Title, Symbol);

    /// <summary>A title with the sign of its unit; the title alone where numbers have none.</summary>
    public static string LabelOf(string title, string symbol) => symbol.Length == 0 ? title : $"{title} ({symbol})";

    /// <summary>A value in the display unit.</summary>
    public double Value(double canonical) => _conversion.Apply(canonical);

    /// <summary>A difference in the display unit.</summary>
    public double Difference(double canonical) => _conversion.ApplyToDifference(canonical);

    /// <summary>A value with its unit.</summary>
    public string TextOf(double canonical) => WithUnit(Number(Value(canonical), Decimals), Symbol);

    /// <summary>A difference with sign and unit.</summary>
    public string TextOfDifference(double canonical) => WithUnit(Signed(Difference(canonical)), Symbol);

    /// <summary>A number of the display unit with its sign.</summary>
    public string Signed(double shown) => Signed(shown, Decimals);

    /// <summary>A number with that many decimals and its sign.</summary>
    public static string Signed(double value, int decimals)
    {
        var text = Number(value, decimals);
        return Math.Round(value, decimals, MidpointRounding.AwayFromZero) > 0 ? "+" + text : text;
    }

    /// <summary>A number with that many decimals.</summary>
    public static string Number(double value, int decimals)
    {
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        var text = Math.Abs(rounded).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return rounded < 0 ? "−" + text : text;
    }

    /// <summary>A number and the sign of its unit.</summary>
    public static string WithUnit(string number, string symbol) => symbol.Length == 0 || number.Length == 0 ? number : symbol is "°" ? number + symbol : $"{number} {symbol}";
}
