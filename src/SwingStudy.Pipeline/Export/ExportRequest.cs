using SwingStudy.Pipeline.Masking;

namespace SwingStudy.Pipeline.Export;

/// <summary>What to export and where to.</summary>
/// <param name="Folder">The folder to write; new or empty.</param>
/// <param name="Formats"><c>csv</c>, <c>parquet</c>, <c>arrow</c>.</param>
/// <param name="Versions">Version of each table to export; tables that are not named are left out.</param>
/// <param name="Title">Title of the package.</param>
public sealed record ExportRequest(string Folder, IReadOnlyList<string> Formats, IReadOnlyDictionary<string, long> Versions, string Title)
{
    /// <summary>What hides phases from a blind analyst; null where nobody is blind.</summary>
    public PhaseMask? Mask { get; init; }

    /// <summary>All formats there are.</summary>
    public static IReadOnlyList<string> AllFormats { get; } = ["csv", "parquet", "arrow"];
}
