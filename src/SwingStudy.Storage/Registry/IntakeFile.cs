using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Storage.Registry;

/// <summary>One file that came in, by the hash of its bytes.</summary>
public sealed record IntakeFile
{
    /// <summary>Hash of its bytes.</summary>
    public required Sha256 Hash { get; init; }

    /// <summary>Name of the source whose mapping read it; null when none matched.</summary>
    public string? Source { get; init; }

    /// <summary>Where it lay, relative to the inbox, or the path that was given.</summary>
    public required string InboxPath { get; init; }

    /// <summary>Bytes.</summary>
    public required long Size { get; init; }

    /// <summary>What became of it.</summary>
    public required IntakeStatus Status { get; init; }

    /// <summary>Lines or records read; for a taken file the sum of the other three.</summary>
    public long LinesRead { get; init; }

    /// <summary>Rows that became captures, sessions or moments.</summary>
    public long RowsTaken { get; init; }

    /// <summary>Rows that could not be taken.</summary>
    public long RowsRejected { get; init; }

    /// <summary>Lines recognised as not data: preamble, headings, footers, repeats.</summary>
    public long LinesNotData { get; init; }

    /// <summary>Hash of the mapping that read it.</summary>
    public Sha256? MappingHash { get; init; }

    /// <summary>Encoding declared or found.</summary>
    public string? Encoding { get; init; }

    /// <summary>Delimiter declared or found.</summary>
    public string? Delimiter { get; init; }

    /// <summary>Decimal mark declared or found.</summary>
    public string? DecimalMark { get; init; }

    /// <summary>Preamble lines as a JSON document.</summary>
    public string? Preamble { get; init; }

    /// <summary>Why it is held.</summary>
    public IReadOnlyList<Problem> HoldReasons { get; init; } = [];

    /// <summary>Anything else the intake wants to keep, as a JSON document.</summary>
    public string? Details { get; init; }

    /// <summary>When it was taken or held.</summary>
    public required Instant At { get; init; }
}
