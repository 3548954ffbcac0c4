using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Mapping.Columns;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>A column of samples: where it stands and how its cells become numbers of the canonical unit.</summary>
/// <param name="Channel">What it fills, in the device's axes.</param>
/// <param name="Unit">The canonical unit.</param>
/// <param name="Position">Position of the column.</param>
/// <param name="Heading">Its heading.</param>
/// <param name="Numbers">How numbers are written.</param>
/// <param name="Scale">From the file's number to the canonical unit.</param>
/// <param name="Missing">What stands for a lost sample.</param>
internal sealed record SampleColumn(string Channel, string Unit, int Position, string Heading, NumberText Numbers, LinearScale Scale, MissingTokens Missing)
{
    /// <summary>Whether its cells are times of day, which become seconds.</summary>
    public bool IsTimeOfDay { get; init; }

    /// <summary>The value of a row; NaN where lost or unreadable, the latter with a reject.</summary>
    public double Read(in RowCells cells, List<MappedReject> rejects)
    {
        if (cells.Kind(Position) == CellKind.Number)
            return Scale.Apply(cells.Number(Position));
        var cell = CellText.Trim(cells[Position]);
        if (Missing.MayBeNumber && Missing.Hold(cell))
            return double.NaN;
        if (IsTimeOfDay ? TimeOfDayText.TryRead(cell, out var value) : Numbers.TryRead(cell, out value))
            return Scale.Apply(value);
        if (!Missing.Hold(cell))
            rejects.Add(new MappedReject(cells.Line, cell.ToString(), RejectReason.Unparsable, "a number", false, Heading, null));
        return double.NaN;
    }
}
