namespace SwingStudy.App.Demo.Model;

/// <summary>A place, force or moment in the laboratory: x to the target, y up, z to the right when facing the target.</summary>
internal readonly record struct Point3(double X, double Y, double Z)
{
    /// <summary>Length.</summary>
    public double Norm => Math.Sqrt(Dot(this));

    public static Point3 operator +(Point3 a, Point3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Point3 operator -(Point3 a, Point3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Point3 operator *(double scale, Point3 a) => new(scale * a.X, scale * a.Y, scale * a.Z);

    /// <summary>Scalar product.</summary>
    public double Dot(Point3 other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>Vector product.</summary>
    public Point3 Cross(Point3 other) => new((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));
}
