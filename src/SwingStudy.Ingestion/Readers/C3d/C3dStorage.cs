namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>How the samples of a C3D file are stored.</summary>
/// <param name="Order">Byte order and kind of reals.</param>
/// <param name="IsReal">Reals (true), or 16-bit integers with a scale (false).</param>
public readonly record struct C3dStorage(C3dByteOrder Order, bool IsReal)
{
    /// <summary>Little-endian reals, as most programs write.</summary>
    public static C3dStorage IntelReal { get; } = new(C3dByteOrder.Intel, true);

    /// <summary>All six.</summary>
    public static IReadOnlyList<C3dStorage> All { get; } = [.. Enum.GetValues<C3dByteOrder>().SelectMany(order => (C3dStorage[])[new(order, true), new(order, false)])];
}
