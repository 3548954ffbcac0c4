using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Mapping.Columns;
using SwingStudy.Ingestion.Mapping.Rows;

namespace SwingStudy.Ingestion.Mapping;

/// <summary>A mapping bound to one file: which column holds what, and how its cells become values. Immutable; used by all threads at once.</summary>
internal sealed record MappingPlan
{
    /// <summary>The mapping.</summary>
    public required SourceMapping Mapping { get; init; }

    /// <summary>Time of a row.</summary>
    public required TimeColumn Time { get; init; }

    /// <summary>The player's name or code.</summary>
    public required ColumnPlace Participant { get; init; }

    /// <summary>What stands for no player.</summary>
    public required MissingTokens ParticipantMissing { get; init; }

    /// <summary>The device's number; null when the mapping has none.</summary>
    public required ColumnPlace? Sequence { get; init; }

    /// <summary>What stands for no number.</summary>
    public required MissingTokens SequenceMissing { get; init; }

    /// <summary>The phase of a session; null when the mapping has none.</summary>
    public required ColumnPlace? Phase { get; init; }

    /// <summary>Words of phases.</summary>
    public required WordList PhaseWords { get; init; }

    /// <summary>What stands for no phase.</summary>
    public required MissingTokens PhaseMissing { get; init; }

    /// <summary>Columns of numbers, counts and yes or no, in file order.</summary>
    public required IReadOnlyList<NumericColumn> Numbers { get; init; }

    /// <summary>Columns of texts and words, in file order.</summary>
    public required IReadOnlyList<TextValueColumn> Texts { get; init; }

    /// <summary>Rows that are no data.</summary>
    public required RowClassifier NotData { get; init; }

    /// <summary>Practice swings.</summary>
    public required RowClassifier Practice { get; init; }

    /// <summary>What does not stand in the way but should be known: columns that nobody mapped.</summary>
    public required IReadOnlyList<Problem> Remarks { get; init; }
}
