namespace SwingStudy.Storage.Tables;

/// <summary>One Parquet file of a table, as the table's log names it.</summary>
/// <param name="Path">Path below the table's folder, with forward slashes: <c>participant=P01/P01-20260907-1-0f3a….parquet</c>.</param>
/// <param name="Partition">Value of the partition column in all its rows; null for rows without one and for tables without partitions.</param>
/// <param name="Unit">The unit of work that wrote it: the first of the originals that were taken in together, a session, a player; empty where a foreign program did not say.</param>
/// <param name="Size">Bytes.</param>
/// <param name="Rows">Rows.</param>
/// <param name="Statistics">Delta statistics as JSON text: numRecords, minValues, maxValues, nullCount.</param>
/// <param name="ModifiedMillis">When it was written, in milliseconds since 1970 UTC.</param>
public sealed record DataFile(string Path, string? Partition, string Unit, long Size, long Rows, string Statistics, long ModifiedMillis)
{
    /// <summary>Hashes of the originals whose rows it holds, parted by spaces; empty where it holds rows of its unit alone.</summary>
    public string Originals { get; init; } = "";

    /// <summary>The originals of a file that intake wrote: those named, or the one after which its unit is named.</summary>
    public IReadOnlyList<string> OriginalHashes => Originals.Length == 0 ? [Unit] : Originals.Split(' ');
}
