namespace SwingStudy.Pipeline.Measure.Derived;

/// <summary>Ball speed over club head speed, a number without unit.</summary>
internal sealed class SpeedRatio : DerivedVariable
{
    public override string Name => "speed_ratio";

    public override string Formula => "ball_speed / club_head_speed";

    public override IReadOnlyList<string> Needs { get; } = ["ball_speed", "club_head_speed"];

    public override double Compute(ReadOnlySpan<double> values) => values[1] > 0 ? values[0] / values[1] : double.NaN;
}
