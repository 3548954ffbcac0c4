namespace SwingStudy.Ingestion.Mapping.Rows;

/// <summary>The taken rows of one block as canonical values, column by column, packed: files of millions of rows are held in memory until they are written.</summary>
internal sealed record MappedBlock
{
    /// <summary>Number of rows.</summary>
    public required int Count { get; init; }

    /// <summary>Line of each row in the file.</summary>
    public required int[] Lines { get; init; }

    /// <summary>Time of each row in milliseconds since 1970: local, or UTC where <see cref="IsUtc"/> says so.</summary>
    public required long[] Millis { get; init; }

    /// <summary>Whether times are UTC already, row by row; null when all are what the format says.</summary>
    public required bool[]? IsUtc { get; init; }

    /// <summary>The player's name or code as it stands in the file.</summary>
    public required PackedTexts Aliases { get; init; }

    /// <summary>The device's number, whole; NaN where it gives none.</summary>
    public required PackedNumbers Sequence { get; init; }

    /// <summary>Practice swings; null when no row is one.</summary>
    public required bool[]? Practice { get; init; }

    /// <summary>The phase that a session's row names; null when the mapping has none.</summary>
    public required PackedTexts? Phases { get; init; }

    /// <summary>Values of the numeric columns, in the order of the plan.</summary>
    public required PackedNumbers[] Numbers { get; init; }

    /// <summary>Values of the text columns, in the order of the plan.</summary>
    public required PackedTexts[] Texts { get; init; }

    /// <summary>What could not be taken, in file order.</summary>
    public required IReadOnlyList<MappedReject> Rejects { get; init; }

    /// <summary>How many rows were no data, by label.</summary>
    public required IReadOnlyDictionary<string, int> NotData { get; init; }

    /// <summary>How many rows were rejected.</summary>
    public required int RejectedRows { get; init; }
}
