namespace SwingStudy.Pipeline.Measure.Derived;

/// <summary>How much grip speed is lost before impact, percent of its peak.</summary>
internal sealed class GripSpeedDrop : DerivedVariable
{
    public override string Name => "grip_speed_drop";

    public override string Formula => "100 * (grip_speed_peak - grip_speed_at_impact) / grip_speed_peak";

    public override IReadOnlyList<string> Needs { get; } = ["grip_speed_peak", "grip_speed_at_impact"];

    public override double Compute(ReadOnlySpan<double> values) => values[0] > 0 ? 100 * (values[0] - values[1]) / values[0] : double.NaN;
}
