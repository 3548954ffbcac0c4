using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Mapping;

namespace SwingStudy.Ingestion.Intake;

/// <summary>What would happen to a file. Nothing is stored.</summary>
public sealed record SourceTrial
{
    /// <summary>The file.</summary>
    public required string File { get; init; }

    /// <summary>The source whose mapping reads it; null when none does.</summary>
    public string? Source { get; init; }

    /// <summary>Encoding, and how it is known; null for workbooks and where no mapping fits.</summary>
    public string? Encoding { get; init; }

    /// <summary>The sign between cells; null where there is none.</summary>
    public char? Delimiter { get; init; }

    /// <summary>The decimal sign; null where no mapping fits.</summary>
    public char? Decimal { get; init; }

    /// <summary>Lines above the headings.</summary>
    public IReadOnlyList<string> Preamble { get; init; } = [];

    /// <summary>Headings of the columns.</summary>
    public IReadOnlyList<string> Headings { get; init; } = [];

    /// <summary>Cells of the first rows as they stand in the file.</summary>
    public IReadOnlyList<IReadOnlyList<string>> RowsAsRead { get; init; } = [];

    /// <summary>Names of what the first rows become: line, time, player, number, then variables with their units.</summary>
    public IReadOnlyList<string> MappedColumns { get; init; } = [];

    /// <summary>The first rows as they would be stored, in canonical units; null: missing.</summary>
    public IReadOnlyList<IReadOnlyList<string?>> RowsAsMapped { get; init; } = [];

    /// <summary>The balance of lines.</summary>
    public LineCounts Counts { get; init; } = LineCounts.None;

    /// <summary>The first rejected rows and cells: line, column, raw text, reason, what was expected.</summary>
    public IReadOnlyList<TrialReject> Rejects { get; init; } = [];

    /// <summary>Rejected rows and cells in all.</summary>
    public long RejectCount { get; init; }

    /// <summary>Why the file would be held.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>What does not stand in the way but should be known.</summary>
    public IReadOnlyList<Problem> Remarks { get; init; } = [];
}
