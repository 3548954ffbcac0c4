namespace SwingStudy.Pipeline.Measure.Derived;

/// <summary>From the first movement of the club to the top, seconds.</summary>
internal sealed class BackswingTime : DerivedVariable
{
    public override string Name => "backswing_time";

    public override string Formula => "t_top - t_start";

    public override IReadOnlyList<string> Needs { get; } = ["t_top", "t_start"];

    public override double Compute(ReadOnlySpan<double> values) => values[0] - values[1];
}
