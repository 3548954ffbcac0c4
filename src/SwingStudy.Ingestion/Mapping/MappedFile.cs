using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Mapping.Rows;

namespace SwingStudy.Ingestion.Mapping;

/// <summary>All rows of one file as canonical values, in file order, with what could not be taken. Nothing of it depends on the study's people or earlier files.</summary>
internal sealed record MappedFile
{
    /// <summary>The file bound to its mapping.</summary>
    public required MappingPlan Plan { get; init; }

    /// <summary>The blocks in which the values lie.</summary>
    public required IReadOnlyList<MappedBlock> Blocks { get; init; }

    /// <summary>Block of each taken row.</summary>
    public required int[] BlockOf { get; init; }

    /// <summary>Position of each taken row in its block.</summary>
    public required int[] RowOf { get; init; }

    /// <summary>Line of each taken row.</summary>
    public required int[] Lines { get; init; }

    /// <summary>Time of each taken row, UTC, milliseconds since 1970.</summary>
    public required long[] RecordedAt { get; init; }

    /// <summary>The device's number of each taken row; <see cref="long.MinValue"/> where there is none.</summary>
    public required long[] Sequence { get; init; }

    /// <summary>Player of each taken row, as a position in <see cref="Aliases"/>.</summary>
    public required int[] AliasOf { get; init; }

    /// <summary>Names and codes of players in the order of their first row.</summary>
    public required IReadOnlyList<string> Aliases { get; init; }

    /// <summary>Rows and cells that could not be taken, in file order.</summary>
    public required IReadOnlyList<MappedReject> Rejects { get; init; }

    /// <summary>Lines of the file, and what became of them.</summary>
    public required LineCounts Counts { get; init; }

    /// <summary>What does not stand in the way but should be known.</summary>
    public required IReadOnlyList<Problem> Remarks { get; init; }

    /// <summary>Lines of the file that each taken row stands for; null when each is one line, as always but in the long form.</summary>
    public int[]? LinesPerRow { get; init; }

    /// <summary>Number of taken rows.</summary>
    public int Count => Lines.Length;

    /// <summary>Value of a numeric column for a taken row; NaN where missing.</summary>
    public double Number(int column, int row) => Blocks[BlockOf[row]].Numbers[column][RowOf[row]];

    /// <summary>Value of a text column for a taken row; null where missing.</summary>
    public string? Text(int column, int row) => Blocks[BlockOf[row]].Texts[column][RowOf[row]];

    /// <summary>Whether a taken row is a practice swing.</summary>
    public bool IsPractice(int row) => Blocks[BlockOf[row]].Practice is { } practice && practice[RowOf[row]];

    /// <summary>Phase that a session's row names.</summary>
    public string? Phase(int row) => Blocks[BlockOf[row]].Phases?[RowOf[row]];
}
