using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Intake;

/// <summary>What the rows of one player in a file are, against what the study has.</summary>
internal sealed class Overlap
{
    /// <summary>Rows to store, in file order.</summary>
    public List<int> New { get; } = [];

    /// <summary>The capture that each of <see cref="New"/> replaces, or null; empty when no row replaces any.</summary>
    public List<string?> RevisionOf { get; } = [];

    /// <summary>Rows that the study has already, with the same values.</summary>
    public List<int> Repeats { get; } = [];

    /// <summary>What changed.</summary>
    public List<RowRevision> Revisions { get; } = [];

    /// <summary>Why the file is held.</summary>
    public List<Problem> Problems { get; } = [];

    /// <summary>Rows of the replaced exports that this file lacks.</summary>
    public long Lacking { get; set; }
}
