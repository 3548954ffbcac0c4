using SwingStudy.Motion.Geometry;

namespace SwingStudy.Pipeline.Tests.Laboratories;

/// <summary>A plate as it lies in an invented laboratory.</summary>
/// <param name="Plate">lead, trail or both.</param>
/// <param name="Top">Middle of its top.</param>
internal sealed record PlateMount(string Plate, Vector3D Top)
{
    /// <summary>Turn about up, right-handed.</summary>
    public double TurnDeg { get; init; }

    /// <summary>Depth of the origin of its loads below the top.</summary>
    public double DepthM { get; init; }

    /// <summary>Place of that origin beside the middle, to the target and to the right before the plate is turned.</summary>
    public (double X, double Z) Origin { get; init; }

    /// <summary>Thickness of a mat on it.</summary>
    public double MatM { get; init; }

    /// <summary>A direction of the plate that is not turned, in the laboratory.</summary>
    public Vector3D Turned(Vector3D direction) => Rotation3D.About(Vector3D.Up, TurnDeg * Math.PI / 180).Turn(direction);

    /// <summary>Origin of its loads in the laboratory.</summary>
    public Vector3D Sensors => Top + Turned(new Vector3D(Origin.X, 0, Origin.Z)) - (DepthM * Vector3D.Up);

    /// <summary>The reaction on whoever stands on it and its moment about a point.</summary>
    public (Vector3D Force, Vector3D Moment) About(Vector3D point, Stance stance, double time)
    {
        Vector3D force = default, moment = default;
        foreach (var foot in Plate == "both" ? ["lead", "trail"] : new[] { Plate })
        {
            var (own, place, free) = stance.Foot(foot, time);
            force += own;
            moment += (place - point).Cross(own) + (free * Vector3D.Up);
        }

        return (force, moment);
    }
}
