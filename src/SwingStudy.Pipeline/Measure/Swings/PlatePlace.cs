using SwingStudy.Domain.Sources;
using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>Where a plate of a source lies, as its mapping declares it.</summary>
/// <param name="Source">The source.</param>
/// <param name="Plate">A name of <see cref="Domain.Curves.Channels.Plates"/>, or left or right.</param>
/// <param name="Geometry">Its place.</param>
internal sealed record PlatePlace(string Source, string Plate, PlateGeometry Geometry)
{
    private bool IsDeclared => !double.IsNaN(Geometry.CentreXM) && !double.IsNaN(Geometry.CentreZM);

    private Vector3D Centre => new(Geometry.CentreXM, Geometry.CentreYM, Geometry.CentreZM);

    /// <summary>The pose; null when the place is not declared.</summary>
    public PlatePose? ToPose() => IsDeclared
        ? PlatePose.OfTop(Centre, Geometry.DepthM, Geometry.MatM, Rotation3D.About(Vector3D.Up, Geometry.TurnDeg * Math.PI / 180).Turn(new Vector3D(Geometry.OriginXM, 0, Geometry.OriginZM)))
        : null;

    /// <summary>The pose of a plate whose file says where its moments are about; the player stands as high as declared, else at that point, plus a mat.</summary>
    public PlatePose About(Vector3D origin) => new(origin, (IsDeclared ? Geometry.CentreYM - origin.Y : 0) + Geometry.MatM);
}
