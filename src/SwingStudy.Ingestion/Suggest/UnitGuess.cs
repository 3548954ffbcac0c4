using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Finds the unit in which the values of a column are usual for a variable.</summary>
/// <param name="Unit">Customary name or code as the mapping may write it; null when the file tells it or there is none.</param>
/// <param name="Fit">How well the values fit, 0 to 1: half for possible ones, half for usual ones.</param>
/// <param name="Told">Whether the file itself names the unit.</param>
/// <param name="Reason">For the comment.</param>
internal sealed record UnitGuess(string? Unit, double Fit, bool Told, string Reason)
{
    /// <summary>Units that exports use, each tried where its dimension fits.</summary>
    private static readonly string[] Customary = ["mph", "m/s", "km/h", "yd", "m", "ft", "mm", "cm", "in", "deg", "rad", "rpm", "deg/s", "rad/s", "ms", "s", "N", "lbf", "kg", "lb", "%", "1", "°C", "°F"];

    /// <summary>The guess, or null when the column's unit or all its values speak against the variable.</summary>
    public static UnitGuess? For(ColumnProfile column, Variable variable, double[] sorted)
    {
        var told = column.Heading.Unit is { } text ? UnitCatalogue.Parse(text) : null;
        if (told is null && column.HasUnitsInCells)
            return InCells(column, variable, sorted);
        if (told is null && column.TrailingUnit is { } trailing && variable.Unit is { } code && UnitCatalogue.ParseCode(code) is { } target
            && UnitCatalogue.Parse(trailing) is { } atEnd && UnitConversion.Between(atEnd, target) is { } ofEnd)
            return FitOf(variable, ofEnd, sorted) is >= 0.25 and var fits ? new(trailing, fits, true, $"the heading ends with the unit {trailing}; values {Usual(fits)}") : null;
        if (variable.Unit is null || UnitCatalogue.ParseCode(variable.Unit) is not { } canonical)
            return told is null ? new(null, 0.5, false, "") : null;
        if (told is not null)
        {
            if (UnitConversion.Between(told, canonical) is not { } conversion)
                return null;
            var fit = FitOf(variable, conversion, sorted);
            return fit < 0.25 ? null : new(null, fit, true, $"unit {column.Heading.Unit}; values {Usual(fit)}");
        }

        UnitGuess? best = null;
        foreach (var name in (IEnumerable<string>)[canonical.Code, variable.ShownUnit ?? canonical.Code, .. Customary])
        {
            if (UnitCatalogue.Parse(name) is not { } unit || UnitConversion.Between(unit, canonical) is not { } conversion)
                continue;
            var fit = FitOf(variable, conversion, sorted);
            if (fit > (best?.Fit ?? 0.25) + 1e-9)
                best = new(name, fit, false, $"{(column.Heading.Unit is { } brackets ? $"'{brackets}' is no known unit" : "no unit told")}; values are {Usual(fit)} in {name}");
        }

        return best;
    }

    private static UnitGuess? InCells(ColumnProfile column, Variable variable, double[] sorted)
    {
        var most = column.CellUnits.MaxBy(pair => pair.Value).Key;
        if (variable.Unit is not { } code || UnitCatalogue.Parse(most) is not { } unit || UnitConversion.Between(unit, UnitCatalogue.ParseCode(code)!) is not { } conversion)
            return null;
        var fit = FitOf(variable, conversion, sorted);
        return fit < 0.25 ? null : new(FieldSource.UnitInCells, fit, true, $"cells name their unit: {string.Join(", ", column.CellUnits.Keys)}; values {Usual(fit)}");
    }

    private static string Usual(double fit) => fit >= 0.9 ? "usual" : fit >= 0.6 ? "mostly usual" : "possible";

    private static double FitOf(Variable variable, UnitConversion conversion, double[] sorted)
    {
        if (sorted.Length == 0)
            return 0.5;
        var possible = Share(sorted, conversion, variable.Minimum ?? double.NegativeInfinity, variable.Maximum ?? double.PositiveInfinity);
        if (possible < 0.5)
            return 0;
        var usual = variable.Typical is { } typical ? Share(sorted, conversion, typical.Low, typical.High) : 0.5;
        return (0.5 * possible) + (0.5 * usual);
    }

    private static double Share(double[] values, UnitConversion conversion, double low, double high) =>
        (double)values.Count(value => conversion.Apply(value) is var converted && converted >= low && converted <= high) / values.Length;
}
