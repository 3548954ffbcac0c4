using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Mapping;

namespace SwingStudy.Ingestion.Intake;

/// <summary>What became of one file, with its balance.</summary>
public sealed record FileResult
{
    private static readonly string[] Forbidding =
        ["consent-missing", "consent-refused", "consent-again", "guardian-missing", "assent-missing", "age-unknown", "participant-left", "person-erased"];

    /// <summary>The file: relative to the inbox, or as it was named.</summary>
    public required string File { get; init; }

    /// <summary>What became of it.</summary>
    public required FileOutcome Outcome { get; init; }

    /// <summary>Hash of its bytes; null when it could not be read.</summary>
    public Sha256? Hash { get; init; }

    /// <summary>The source whose mapping read it; null when none did.</summary>
    public string? Source { get; init; }

    /// <summary>Lines read, taken, rejected and not data.</summary>
    public LineCounts Counts { get; init; } = LineCounts.None;

    /// <summary>Cells that were rejected while their rows were taken.</summary>
    public long RejectedCells { get; init; }

    /// <summary>Recordings that were stored.</summary>
    public long Recordings { get; init; }

    /// <summary>Captures or sessions that replace earlier ones.</summary>
    public IReadOnlyList<RowRevision> Revisions { get; init; } = [];

    /// <summary>Why it is held or could not be read; may hold names, so it is shown and not stored as it is.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>Whether a rule about people forbids it: consent, withdrawal, erasure. Anything else that holds a file is a question to a person.</summary>
    public bool IsForbidden => Problems.Any(problem => Forbidding.Contains(problem.Code));

    /// <summary>What does not stand in the way but should be known.</summary>
    public IReadOnlyList<Problem> Remarks { get; init; } = [];
}
