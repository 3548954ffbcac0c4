namespace SwingStudy.Storage.Tables.Log;

/// <summary>The actions of one commit.</summary>
internal sealed record LogEntry
{
    /// <summary>Version.</summary>
    internal required long Version { get; init; }

    /// <summary>New columns; null when they stay.</summary>
    internal TableMetadata? Table { get; init; }

    /// <summary>Whether the entry declares the protocol, as the first does.</summary>
    internal bool DeclaresProtocol { get; init; }

    /// <summary>The column whose values stand beside each added file; null for tables without partitions.</summary>
    internal string? PartitionColumn { get; init; }

    /// <summary>Files added.</summary>
    internal IReadOnlyList<DataFile> Adds { get; init; } = [];

    /// <summary>Paths removed, with the time of removal.</summary>
    internal IReadOnlyList<KeyValuePair<string, long>> Removes { get; init; } = [];

    /// <summary>Numbers of acts that count once.</summary>
    internal IReadOnlyList<KeyValuePair<string, long>> Applications { get; init; } = [];

    /// <summary>Time of the commit, in milliseconds since 1970 UTC.</summary>
    internal long AtMillis { get; init; }

    /// <summary>Why.</summary>
    internal CommitInfo? Info { get; init; }
}
