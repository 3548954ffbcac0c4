namespace SwingStudy.Domain.Sources;

/// <summary>Which reader opens the files of a source.</summary>
public enum ReaderKind
{
    /// <summary>Delimited text.</summary>
    Delimited,

    /// <summary>A workbook (.xlsx, .xls).</summary>
    Workbook,

    /// <summary>A JSON document with an array of records.</summary>
    Json,

    /// <summary>One JSON object a line.</summary>
    Ndjson,

    /// <summary>Points and analog channels in C3D; only recordings.</summary>
    C3d,
}
