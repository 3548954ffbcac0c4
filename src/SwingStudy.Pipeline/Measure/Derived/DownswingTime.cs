namespace SwingStudy.Pipeline.Measure.Derived;

/// <summary>From the top to impact, seconds.</summary>
internal sealed class DownswingTime : DerivedVariable
{
    public override string Name => "downswing_time";

    public override string Formula => "t_impact - t_top";

    public override IReadOnlyList<string> Needs { get; } = ["t_impact", "t_top"];

    public override double Compute(ReadOnlySpan<double> values) => values[0] - values[1];
}
