namespace SwingStudy.Pipeline.Measure.Derived;

/// <summary>Backswing time over downswing time, a number without unit.</summary>
internal sealed class TempoRatio : DerivedVariable
{
    public override string Name => "tempo_ratio";

    public override string Formula => "backswing_time / downswing_time";

    public override IReadOnlyList<string> Needs { get; } = ["backswing_time", "downswing_time"];

    public override double Compute(ReadOnlySpan<double> values) => values[1] > 0 ? values[0] / values[1] : double.NaN;
}
