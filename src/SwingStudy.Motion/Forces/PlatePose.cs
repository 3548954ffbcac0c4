using SwingStudy.Motion.Geometry;

namespace SwingStudy.Motion.Forces;

/// <summary>Where a plate's loads are measured, and how high above that the player stands.</summary>
/// <param name="Origin">Origin of forces and moments in the laboratory, metres.</param>
/// <param name="HeightM">Height of what the player stands on above the origin: depth of the sensors below the top, plus the thickness of a mat.</param>
public sealed record PlatePose(Vector3D Origin, double HeightM)
{
    /// <summary>Middle of the plate's top; where nothing else is said, above the origin.</summary>
    public Vector3D Centre { get; init; } = Origin;

    /// <summary>From the middle of the plate's top.</summary>
    /// <param name="topCentre">Middle of the top surface in the laboratory.</param>
    /// <param name="depthM">Depth h of the origin below it.</param>
    /// <param name="matM">Thickness t of a mat on the plate.</param>
    /// <param name="aside">Where the origin lies beside the point below the middle.</param>
    public static PlatePose OfTop(Vector3D topCentre, double depthM, double matM = 0, Vector3D aside = default) =>
        new(topCentre + aside - (depthM * Vector3D.Up), depthM + matM) { Centre = topCentre };

    /// <summary>From the four corners of the top surface, in order around the plate.</summary>
    /// <param name="corners">The corners in the laboratory; the first edge (second to first corner) is the plate's own x axis, the second its own y axis, z up.</param>
    /// <param name="depthM">Depth of the origin below the middle of the corners.</param>
    /// <param name="matM">Thickness of a mat.</param>
    /// <returns>The pose, and the rotation from the plate's own axes (x, y in the plate, z up) to the laboratory's, to turn loads with.</returns>
    public static (PlatePose Pose, Rotation3D FromPlate) OfCorners(IReadOnlyList<Vector3D> corners, double depthM, double matM = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(corners.Count, 4);
        var centre = 0.25 * (corners[0] + corners[1] + corners[2] + corners[3]);
        var x = ((corners[0] + corners[3]) - (corners[1] + corners[2])).Direction;
        var edge = (corners[0] + corners[1]) - (corners[2] + corners[3]);
        var z = x.Cross(edge).Direction;
        return (new PlatePose(centre - (depthM * z), depthM + matM) { Centre = centre }, new Rotation3D(x, z.Cross(x), z));
    }
}
