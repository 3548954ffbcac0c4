namespace SwingStudy.Pipeline.Measure.Derived;

/// <summary>Face angle less club path, degrees in (−180, 180].</summary>
internal sealed class FaceToPath : DerivedVariable
{
    public override string Name => "face_to_path";

    public override string Formula => "face_angle - club_path_angle";

    public override IReadOnlyList<string> Needs { get; } = ["face_angle", "club_path_angle"];

    public override double Compute(ReadOnlySpan<double> values) => WrappedAngle.Of(values[0] - values[1]);
}
