namespace SwingStudy.Motion.Geometry;

/// <summary>A point or direction in the laboratory: x to the target, y up, z to the right facing the target (ISB recommendation of 1995).</summary>
/// <param name="X">Along the target line.</param>
/// <param name="Y">Up.</param>
/// <param name="Z">To the right, facing the target.</param>
public readonly record struct Vector3D(double X, double Y, double Z)
{
    /// <summary>Straight up.</summary>
    public static readonly Vector3D Up = new(0, 1, 0);

    /// <summary>A point of which a coordinate is missing.</summary>
    public static readonly Vector3D Missing = new(double.NaN, double.NaN, double.NaN);

    /// <summary>Euclidean length.</summary>
    public double Length => Math.Sqrt(Dot(this));

    /// <summary>Whether a coordinate is missing.</summary>
    public bool IsMissing => double.IsNaN(X + Y + Z);

    /// <summary>Direction of length one; missing for a vector without length.</summary>
    public Vector3D Direction => Length > 0 ? this / Length : Missing;

    /// <summary>Inner product.</summary>
    public double Dot(Vector3D other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>Vector product, right-handed.</summary>
    public Vector3D Cross(Vector3D other) => new((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));

    /// <summary>Sum.</summary>
    public static Vector3D operator +(Vector3D a, Vector3D b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference.</summary>
    public static Vector3D operator -(Vector3D a, Vector3D b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The opposite.</summary>
    public static Vector3D operator -(Vector3D a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Multiple.</summary>
    public static Vector3D operator *(double factor, Vector3D a) => new(factor * a.X, factor * a.Y, factor * a.Z);

    /// <summary>Part.</summary>
    public static Vector3D operator /(Vector3D a, double divisor) => new(a.X / divisor, a.Y / divisor, a.Z / divisor);
}
