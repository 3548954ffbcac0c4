namespace SwingStudy.Pipeline.Measure;

/// <summary>A variable computed from other variables of the same swing where no device delivered it.</summary>
internal abstract class DerivedVariable
{
    /// <summary>Name in the dictionary.</summary>
    public abstract string Name { get; }

    /// <summary>The formula, as the dictionary states it.</summary>
    public abstract string Formula { get; }

    /// <summary>Variables it is computed from, in the order in which <see cref="Compute"/> takes them.</summary>
    public abstract IReadOnlyList<string> Needs { get; }

    /// <summary>Computes the value in the dictionary's unit.</summary>
    /// <param name="values">One value for each of <see cref="Needs"/>, canonical units, none missing.</param>
    /// <returns>The value; NaN where the formula has none.</returns>
    public abstract double Compute(ReadOnlySpan<double> values);

    /// <summary>All derived variables; one that needs another comes after it.</summary>
    public static IReadOnlyList<DerivedVariable> All { get; } =
    [
        new Derived.SpeedRatio(),
        new Derived.FaceToPath(),
        new Derived.BackswingTime(),
        new Derived.DownswingTime(),
        new Derived.TempoRatio(),
        new Derived.GripSpeedDrop(),
        new Derived.SeparationTop(),
        new Derived.SeparationStretch(),
        new Derived.AngleLostBeforeGripPeak(),
        new Derived.AngleLostToImpact(),
        new Derived.VerticalImpulseInBodyWeights(),
    ];
}
