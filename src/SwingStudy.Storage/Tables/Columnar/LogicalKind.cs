namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Logical types of Parquet that study tables use, by their number in the format's union.</summary>
internal enum LogicalKind
{
    /// <summary>The physical type says it all.</summary>
    None = 0,

    /// <summary>UTF-8 text.</summary>
    Text = 1,

    /// <summary>A list.</summary>
    List = 3,

    /// <summary>A moment in UTC, in microseconds.</summary>
    Timestamp = 8,
}
