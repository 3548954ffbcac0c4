namespace SwingStudy.Motion.Geometry;

/// <summary>Where a rigid segment points: its axes as columns of a rotation matrix.</summary>
/// <param name="X">The segment's x axis in the laboratory.</param>
/// <param name="Y">Its y axis.</param>
/// <param name="Z">Its z axis.</param>
public readonly record struct Rotation3D(Vector3D X, Vector3D Y, Vector3D Z)
{
    /// <summary>Axes of the laboratory.</summary>
    public static readonly Rotation3D Identity = new(new(1, 0, 0), new(0, 1, 0), new(0, 0, 1));

    /// <summary>Whether an axis is missing.</summary>
    public bool IsMissing => X.IsMissing || Y.IsMissing || Z.IsMissing;

    /// <summary>Axes from two directions: z along the first, y the part of the second at right angles to it, x completes.</summary>
    /// <param name="across">Direction of the segment's z axis.</param>
    /// <param name="upward">Direction near the segment's y axis.</param>
    public static Rotation3D From(Vector3D across, Vector3D upward)
    {
        var z = across.Direction;
        var y = (upward - (upward.Dot(z) * z)).Direction;
        return new Rotation3D(y.Cross(z), y, z);
    }

    /// <summary>Rotation about an axis by an angle, right-handed (Rodrigues).</summary>
    /// <param name="axis">The axis, of any length.</param>
    /// <param name="radians">The angle.</param>
    public static Rotation3D About(Vector3D axis, double radians)
    {
        var n = axis.Direction;
        var (sin, cos) = Math.SinCos(radians);
        return new Rotation3D(Turned(Identity.X), Turned(Identity.Y), Turned(Identity.Z));

        Vector3D Turned(Vector3D v) => (cos * v) + (sin * n.Cross(v)) + ((1 - cos) * n.Dot(v) * n);
    }

    /// <summary>A vector of the segment in the laboratory.</summary>
    public Vector3D Turn(Vector3D own) => (own.X * X) + (own.Y * Y) + (own.Z * Z);

    /// <summary>This rotation after another.</summary>
    public Rotation3D After(Rotation3D first) => new(Turn(first.X), Turn(first.Y), Turn(first.Z));

    /// <summary>The rotation back.</summary>
    public Rotation3D Inverse => new(new(X.X, Y.X, Z.X), new(X.Y, Y.Y, Z.Y), new(X.Z, Y.Z, Z.Z));

    /// <summary>Angle about the vertical of the order Y-X-Z, in radians: axial turn first, then bending. R = Ry Rx Rz, so atan2(R13, R33).</summary>
    /// <remarks>Source: Grood and Suntay (1983), J Biomech Eng 105:136, for ordered rotations; the axial-first order keeps turn apart from bending.</remarks>
    public double AxialTurn => Math.Atan2(Z.X, Z.Z);

    /// <summary>Flexion, abduction and axial turn of the order Z-X-Y, in radians: R = Rz Rx Ry, so atan2(−R12, R22), asin(R32), atan2(−R31, R33).</summary>
    /// <remarks>Source: Wu et al. (2002), J Biomech 35:543. Degenerates near 90 degrees of abduction; flag above 75.</remarks>
    public (double Flexion, double Abduction, double Axial) Cardan =>
        (Math.Atan2(-Y.X, Y.Y), Math.Asin(Math.Clamp(Y.Z, -1, 1)), Math.Atan2(-X.Z, Z.Z));

    /// <summary>Angle of the one rotation that leads here from the laboratory's axes, in radians, 0 to π: cos θ = (trace − 1) / 2, by atan2 for small angles.</summary>
    public double HelicalAngle
    {
        get
        {
            var skew = new Vector3D(Y.Z - Z.Y, Z.X - X.Z, X.Y - Y.X);
            return Math.Atan2(skew.Length, X.X + Y.Y + Z.Z - 1);
        }
    }
}
