namespace SwingStudy.Pipeline.Measure.Derived;

/// <summary>Change of the angle between forearm and shaft from the top to the peak of grip speed, degrees.</summary>
internal sealed class AngleLostBeforeGripPeak : DerivedVariable
{
    public override string Name => "angle_lost_before_grip_peak";

    public override string Formula => "forearm_shaft_grip_peak - forearm_shaft_top";

    public override IReadOnlyList<string> Needs { get; } = ["forearm_shaft_grip_peak", "forearm_shaft_top"];

    public override double Compute(ReadOnlySpan<double> values) => values[0] - values[1];
}
