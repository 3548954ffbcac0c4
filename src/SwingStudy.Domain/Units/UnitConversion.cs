namespace SwingStudy.Domain.Units;

/// <summary>How a number in one unit becomes a number in another of the same dimension: value · <paramref name="Factor"/> + <paramref name="Offset"/>.</summary>
/// <param name="Factor">Multiplies first.</param>
/// <param name="Offset">Is added then; 0 but between temperature scales.</param>
public readonly record struct UnitConversion(double Factor, double Offset)
{
    /// <summary>Leaves numbers as they are.</summary>
    public static UnitConversion None { get; } = new(1, 0);

    /// <summary>The conversion, or null when the dimensions differ (<see cref="Unit.MismatchWith"/> says how).</summary>
    public static UnitConversion? Between(Unit from, Unit to) =>
        from.Dimension == to.Dimension ? new(from.Factor / to.Factor, (from.Offset - to.Offset) / to.Factor) : null;

    /// <summary>Converts a value.</summary>
    public double Apply(double value) => (value * Factor) + Offset;

    /// <summary>Converts a difference, a standard error or a standard deviation: the zero of the scale does not matter.</summary>
    public double ApplyToDifference(double difference) => difference * Factor;
}
