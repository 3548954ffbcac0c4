namespace SwingStudy.Pipeline.Measure.Derived;

/// <summary>How far the trunk is turned beyond the pelvis at the top, degrees; not wrapped, both turns count from address.</summary>
internal sealed class SeparationTop : DerivedVariable
{
    public override string Name => "separation_top";

    public override string Formula => "trunk_turn_top - pelvis_turn_top";

    public override IReadOnlyList<string> Needs { get; } = ["trunk_turn_top", "pelvis_turn_top"];

    public override double Compute(ReadOnlySpan<double> values) => values[0] - values[1];
}
