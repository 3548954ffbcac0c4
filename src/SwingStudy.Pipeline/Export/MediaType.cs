namespace SwingStudy.Pipeline.Export;

/// <summary>Media types of the formats of an export.</summary>
internal static class MediaType
{
    /// <summary>The media type of <c>csv</c>, <c>parquet</c> or <c>arrow</c>.</summary>
    public static string Of(string format) => format switch
    {
        "csv" => "text/csv",
        "parquet" => "application/vnd.apache.parquet",
        "arrow" => "application/vnd.apache.arrow.file",
        _ => throw new ArgumentOutOfRangeException(nameof(format), format, "Unknown format."),
    };
}
