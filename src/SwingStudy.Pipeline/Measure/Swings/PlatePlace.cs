using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>Where a plate of a source lies, as its mapping declares it.</summary>
/// <param name="Source">The source.</param>
/// <param name="Plate">lead or trail.</param>
/// <param name="CentreXM">Middle of its top along the target line; NaN when it is not declared.</param>
/// <param name="CentreYM">Height of its top.</param>
/// <param name="CentreZM">Middle of its top across the target line.</param>
/// <param name="DepthM">Depth of the origin of forces and moments below the top.</param>
/// <param name="MatM">Thickness of a mat on it.</param>
internal sealed record PlatePlace(string Source, string Plate, double CentreXM, double CentreYM, double CentreZM, double DepthM, double MatM)
{
    /// <summary>The pose; null when the place is not declared.</summary>
    public PlatePose? ToPose() => double.IsNaN(CentreXM) || double.IsNaN(CentreZM)
        ? null
        : PlatePose.OfTop(new Vector3D(CentreXM, CentreYM, CentreZM), DepthM, MatM);
}
