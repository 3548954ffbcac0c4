namespace SwingStudy.Pipeline.Measure.Derived;

/// <summary>Net vertical impulse of the downswing over body weight, seconds.</summary>
internal sealed class VerticalImpulseInBodyWeights : DerivedVariable
{
    public override string Name => "vertical_impulse_downswing_bw";

    public override string Formula => "vertical_impulse_downswing / body_weight";

    public override IReadOnlyList<string> Needs { get; } = ["vertical_impulse_downswing", "body_weight"];

    public override double Compute(ReadOnlySpan<double> values) => values[1] > 0 ? values[0] / values[1] : double.NaN;
}
