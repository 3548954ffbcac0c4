namespace SwingStudy.Domain.Units;

/// <summary>A unit of measurement: what it measures, and how its numbers become numbers of the base unit of that dimension.</summary>
/// <remarks>Base units are m, kg, s, deg, K, C and {BW}: base = value · <paramref name="Factor"/> + <paramref name="Offset"/>.</remarks>
/// <param name="Code">The UCUM code.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">Size of one unit in base units, positive.</param>
/// <param name="Offset">Zero of the unit in base units; 0 but for temperature scales.</param>
public sealed record Unit(string Code, Dimension Dimension, double Factor, double Offset = 0)
{
    /// <summary>Sign for people: "mph" for <c>[mi_i]/h</c>, "°" for <c>deg</c>; empty for plain numbers.</summary>
    public string Symbol => UnitSymbols.Of(Code);

    /// <summary>Why the two do not convert, naming both dimensions; null when they do.</summary>
    public string? MismatchWith(Unit other)
    {
        if (Dimension == other.Dimension)
            return null;
        var text = $"'{Code}' measures {Dimension.Name}, '{other.Code}' measures {other.Dimension.Name}";
        return Dimension.BodyWeight != other.Dimension.BodyWeight
            ? text + "; body weights and units of force convert only through the player's measured body_weight"
            : text;
    }

    /// <inheritdoc/>
    public override string ToString() => Code;
}
