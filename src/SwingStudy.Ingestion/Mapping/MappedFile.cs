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

    /// <summary>Place of the first row of each block among the rows of all blocks.</summary>
    public required int[] Starts { get; init; }

    /// <summary>Place of each taken row among the rows of all blocks; null when all of them are taken.</summary>
    public required int[]? Places { get; init; }

    /// <summary>Line of each taken row.</summary>
    public required int[] Lines { get; init; }

    /// <summary>Time of each taken row, UTC, milliseconds since 1970.</summary>
    public required long[] RecordedAt { get; init; }

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

    /// <summary>Which of <see cref="Aliases"/> swing left-handed, where a column is mirrored for them; null where none is.</summary>
    public IReadOnlyList<bool>? LeftHanded { get; init; }

    /// <summary>Lines of the file that each taken row stands for; null when each is one line, as always but in the long form.</summary>
    public int[]? LinesPerRow { get; init; }

    /// <summary>Number of taken rows.</summary>
    public int Count => Lines.Length;

    /// <summary>The device's number of a taken row; <see cref="long.MinValue"/> where there is none.</summary>
    public long Sequence(int row) => Find(row, out var place).Sequence[place] is var number && double.IsNaN(number) ? long.MinValue : (long)number;

    /// <summary>Value of a numeric column for a taken row; NaN where missing.</summary>
    public double Number(int column, int row)
    {
        var value = Find(row, out var place).Numbers[column][place];
        return IsMirrored(column, row) ? 0 - value : value;
    }

    /// <summary>Whether a numeric column changes its sign for the player of a taken row.</summary>
    public bool IsMirrored(int column, int row) => LeftHanded is { } hands && Plan.Numbers[column].IsMirrored && hands[AliasOf[row]];

    /// <summary>Value of a text column for a taken row; null where missing.</summary>
    public string? Text(int column, int row) => Find(row, out var place).Texts[column][place];

    /// <summary>Whether a taken row is a practice swing.</summary>
    public bool IsPractice(int row) => Find(row, out var place).Practice is { } practice && practice[place];

    /// <summary>Phase that a session's row names.</summary>
    public string? Phase(int row) => Find(row, out var place).Phases?[place];

    /// <summary>Divides taken rows into stretches that lie in one block.</summary>
    /// <param name="rows">Taken rows, in file order.</param>
    /// <param name="places">Filled with the place of each row in its block.</param>
    public Stretches Stretches(ReadOnlySpan<int> rows, Span<int> places)
    {
        var stretches = new List<(MappedBlock, int)>();
        for (var i = 0; i < rows.Length;)
        {
            var block = Find(rows[i], out var place);
            var start = PlaceOf(rows[i]) - place;
            for (; i < rows.Length && (place = PlaceOf(rows[i]) - start) < block.Count; i++)
                places[i] = place;
            stretches.Add((block, i));
        }

        return new Stretches(stretches);
    }

    private int PlaceOf(int row) => Places is null ? row : Places[row];

    private MappedBlock Find(int row, out int place)
    {
        place = PlaceOf(row);
        var found = Array.BinarySearch(Starts, place);
        // Blocks without a row start where the next one does: the last of them has the row.
        var block = found < 0 ? ~found - 1 : found;
        while (Blocks[block].Count == 0)
            block++;
        place -= Starts[block];
        return Blocks[block];
    }
}
