namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>How integers and reals of a C3D file are written; the values are those of its parameter section.</summary>
public enum C3dByteOrder
{
    /// <summary>Little-endian, IEEE reals.</summary>
    Intel = 84,

    /// <summary>Little-endian integers, VAX F reals.</summary>
    Dec = 85,

    /// <summary>Big-endian, IEEE reals.</summary>
    Sgi = 86,
}
