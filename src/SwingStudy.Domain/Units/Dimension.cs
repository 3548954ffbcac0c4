using System.Globalization;
using System.Text;

namespace SwingStudy.Domain.Units;

/// <summary>What a unit measures: the exponents of its base quantities. Two units convert into one another only when these agree.</summary>
/// <remarks>
/// Plane angle is a base quantity, as in UCUM, so that degrees never pass for a plain number. Body weight is one too: a force in body weights
/// becomes newtons only with the player's own weight, never by a fixed factor.
/// </remarks>
/// <param name="Length">Exponent of length.</param>
/// <param name="Mass">Exponent of mass.</param>
/// <param name="Time">Exponent of time.</param>
/// <param name="Angle">Exponent of plane angle.</param>
/// <param name="Temperature">Exponent of temperature.</param>
/// <param name="Charge">Exponent of electric charge.</param>
/// <param name="BodyWeight">Exponent of the player's body weight.</param>
public readonly record struct Dimension(int Length, int Mass, int Time, int Angle, int Temperature, int Charge, int BodyWeight)
{
    private static readonly Dictionary<Dimension, string> Names = new()
    {
        [default] = "plain number",
        [new(1, 0, 0, 0, 0, 0, 0)] = "length",
        [new(2, 0, 0, 0, 0, 0, 0)] = "area",
        [new(3, 0, 0, 0, 0, 0, 0)] = "volume",
        [new(0, 1, 0, 0, 0, 0, 0)] = "mass",
        [new(0, 0, 1, 0, 0, 0, 0)] = "time",
        [new(0, 0, -1, 0, 0, 0, 0)] = "frequency",
        [new(0, 0, 0, 1, 0, 0, 0)] = "angle",
        [new(0, 0, -1, 1, 0, 0, 0)] = "angular speed",
        [new(0, 0, -2, 1, 0, 0, 0)] = "angular acceleration",
        [new(0, 0, 0, 0, 1, 0, 0)] = "temperature",
        [new(1, 0, -1, 0, 0, 0, 0)] = "speed",
        [new(1, 0, -2, 0, 0, 0, 0)] = "acceleration",
        [new(1, 1, -1, 0, 0, 0, 0)] = "impulse",
        [new(1, 1, -2, 0, 0, 0, 0)] = "force",
        [new(1, 1, -3, 0, 0, 0, 0)] = "force rate",
        [new(2, 1, -2, 0, 0, 0, 0)] = "moment of force or energy",
        [new(2, 1, -3, 0, 0, 0, 0)] = "power",
        [new(-1, 1, -2, 0, 0, 0, 0)] = "pressure",
        [new(2, 1, -2, 0, 0, -1, 0)] = "voltage",
        [new(0, 0, -1, 0, 0, 1, 0)] = "electric current",
        [new(0, 0, 0, 0, 0, 0, 1)] = "multiple of body weight",
        [new(0, 0, -1, 0, 0, 0, 1)] = "multiple of body weight per time",
        [new(0, 0, 1, 0, 0, 0, 1)] = "multiple of body weight times time",
    };

    /// <summary>The trade's word for it, such as "speed"; where there is none, the product of base quantities, such as "length^2·mass^-1".</summary>
    public string Name => Names.TryGetValue(this, out var name) ? name : Product();

    /// <summary>Dimension of a product of two units.</summary>
    public Dimension Times(Dimension other) => new(
        Length + other.Length,
        Mass + other.Mass,
        Time + other.Time,
        Angle + other.Angle,
        Temperature + other.Temperature,
        Charge + other.Charge,
        BodyWeight + other.BodyWeight);

    /// <summary>Dimension of a unit raised to <paramref name="exponent"/>.</summary>
    public Dimension Power(int exponent) => new(
        Length * exponent,
        Mass * exponent,
        Time * exponent,
        Angle * exponent,
        Temperature * exponent,
        Charge * exponent,
        BodyWeight * exponent);

    /// <summary>The <see cref="Name"/>.</summary>
    public override string ToString() => Name;

    private string Product()
    {
        var text = new StringBuilder();
        foreach (var (name, exponent) in ((string, int)[])[
            ("length", Length), ("mass", Mass), ("time", Time), ("angle", Angle),
            ("temperature", Temperature), ("charge", Charge), ("body weight", BodyWeight)])
        {
            if (exponent == 0)
                continue;
            if (text.Length > 0)
                text.Append('·');
            text.Append(name);
            if (exponent != 1)
                text.Append(CultureInfo.InvariantCulture, $"^{exponent}");
        }

        return text.ToString();
    }
}
