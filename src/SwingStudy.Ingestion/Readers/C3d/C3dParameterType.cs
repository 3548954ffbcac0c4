namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>What a parameter holds; the values are those of the file.</summary>
public enum C3dParameterType
{
    /// <summary>Characters.</summary>
    Text = -1,

    /// <summary>Bytes.</summary>
    Byte = 1,

    /// <summary>16-bit integers.</summary>
    Integer = 2,

    /// <summary>32-bit reals.</summary>
    Real = 4,
}
