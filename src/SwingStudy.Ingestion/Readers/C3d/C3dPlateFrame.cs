namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>Axes and centre of a plate in the laboratory of its file, from its corners: x along c1 - c2, z along x cross (c1 - c4), y = z cross x.</summary>
internal sealed class C3dPlateFrame
{
    private readonly double[] _axes;

    /// <summary>Takes twelve numbers, corner after corner.</summary>
    public C3dPlateFrame(IReadOnlyList<double> corners)
    {
        var x = Unit(Difference(corners, 0, 1));
        var z = Unit(Cross(x, Difference(corners, 0, 3)));
        var y = Cross(z, x);
        _axes = [x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]];
        Centre = [.. Enumerable.Range(0, 3).Select(axis => (corners[axis] + corners[3 + axis] + corners[6 + axis] + corners[9 + axis]) / 4)];
    }

    /// <summary>Centre of the surface.</summary>
    public IReadOnlyList<double> Centre { get; }

    /// <summary>Whether the corners span a surface.</summary>
    public static bool IsSound(IReadOnlyList<double> corners)
    {
        if (!corners.All(double.IsFinite))
            return false;
        var area = Cross(Difference(corners, 0, 1), Difference(corners, 0, 3));
        return Math.Sqrt((area[0] * area[0]) + (area[1] * area[1]) + (area[2] * area[2])) is > 1e-9 and < 1e12;
    }

    /// <summary>A vector in plate axes, in the laboratory.</summary>
    public (double X, double Y, double Z) ToLaboratory(double x, double y, double z) => (
        (_axes[0] * x) + (_axes[1] * y) + (_axes[2] * z),
        (_axes[3] * x) + (_axes[4] * y) + (_axes[5] * z),
        (_axes[6] * x) + (_axes[7] * y) + (_axes[8] * z));

    private static double[] Difference(IReadOnlyList<double> corners, int a, int b) =>
        [corners[3 * a] - corners[3 * b], corners[(3 * a) + 1] - corners[(3 * b) + 1], corners[(3 * a) + 2] - corners[(3 * b) + 2]];

    private static double[] Cross(double[] a, double[] b) => [(a[1] * b[2]) - (a[2] * b[1]), (a[2] * b[0]) - (a[0] * b[2]), (a[0] * b[1]) - (a[1] * b[0])];

    private static double[] Unit(double[] vector)
    {
        var length = Math.Sqrt((vector[0] * vector[0]) + (vector[1] * vector[1]) + (vector[2] * vector[2]));
        return [vector[0] / length, vector[1] / length, vector[2] / length];
    }
}
