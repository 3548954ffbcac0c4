namespace SwingStudy.Storage.Tables.Log;

/// <summary>Paths of data files as the log writes them: relative, forward slashes, percent-encoded.</summary>
internal static class LogPath
{
    private const string NoPartition = "__HIVE_DEFAULT_PARTITION__";

    /// <summary>Percent-encodes what a URI does not hold.</summary>
    internal static string Encode(string path) =>
        string.Join('/', path.Split('/').Select(part => Uri.EscapeDataString(part).Replace("%3D", "=", StringComparison.Ordinal)));

    /// <summary>The path on disk.</summary>
    internal static string Decode(string path) => Uri.UnescapeDataString(path);

    /// <summary>Folder of a partition: <c>participant=P01</c>; empty for tables without partitions.</summary>
    internal static string Folder(string? partitionColumn, string? value) => partitionColumn is null
        ? ""
        : $"{partitionColumn}={(string.IsNullOrEmpty(value) ? NoPartition : Safe(value))}/";

    /// <summary>Letters, digits, dot, hyphen and underscore stay; others become hyphens, since the unit's exact name stands in the log.</summary>
    internal static string Safe(string text) =>
        string.Create(text.Length, text, (safe, original) =>
        {
            for (var i = 0; i < safe.Length; i++)
                safe[i] = char.IsAsciiLetterOrDigit(original[i]) || original[i] is '.' or '-' or '_' ? original[i] : '-';
        });
}
