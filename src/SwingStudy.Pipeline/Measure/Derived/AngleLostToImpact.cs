namespace SwingStudy.Pipeline.Measure.Derived;

/// <summary>Change of the angle between forearm and shaft from the peak of grip speed to impact, degrees.</summary>
internal sealed class AngleLostToImpact : DerivedVariable
{
    public override string Name => "angle_lost_to_impact";

    public override string Formula => "forearm_shaft_impact - forearm_shaft_grip_peak";

    public override IReadOnlyList<string> Needs { get; } = ["forearm_shaft_impact", "forearm_shaft_grip_peak"];

    public override double Compute(ReadOnlySpan<double> values) => values[0] - values[1];
}
