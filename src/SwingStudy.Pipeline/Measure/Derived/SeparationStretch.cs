namespace SwingStudy.Pipeline.Measure.Derived;

/// <summary>How much the separation grows after the top, degrees.</summary>
internal sealed class SeparationStretch : DerivedVariable
{
    public override string Name => "separation_stretch";

    public override string Formula => "separation_max - separation_top";

    public override IReadOnlyList<string> Needs { get; } = ["separation_max", "separation_top"];

    public override double Compute(ReadOnlySpan<double> values) => values[0] - values[1];
}
