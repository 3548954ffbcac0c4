using System.Runtime.Intrinsics;
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

    /// <summary>Reads neighbouring rows; NaN where a value is lost or unreadable, the latter with a reject.</summary>
    /// <param name="block">The rows.</param>
    /// <param name="from">The first of them.</param>
    /// <param name="into">Takes a value for each row.</param>
    /// <param name="rejects">Takes the cells that cannot be read, from above to below.</param>
    public void Read(RawBlock block, int from, Span<double> into, List<MappedReject> rejects)
    {
        const int few = FixedDecimals.Cells;
        var row = 0;
        if (!block.HasKinds && !Missing.MayBeNumber && !IsTimeOfDay && into.Length >= few)
        {
            // Nearly all cells are a short number with as many decimals as the one above, which no token and no blank can be.
            var places = block.Places(Position);
            var numbers = Numbers.Like(block.Cell(from, Position));
            for (; row + few <= into.Length; row += few)
            {
                if (numbers.TryRead(places, from + row, out var values))
                {
                    Scale.Apply(values).CopyTo(into[row..]);
                    continue;
                }

                ReadEach(block, from + row, into.Slice(row, few), rejects);
                numbers = Numbers.Like(block.Cell(from + row + few - 1, Position));
            }
        }

        ReadEach(block, from + row, into[row..], rejects);
    }

    private void ReadEach(RawBlock block, int from, Span<double> into, List<MappedReject> rejects)
    {
        for (var i = 0; i < into.Length; i++)
            into[i] = Read(block, from + i, rejects);
    }

    private double Read(RawBlock block, int row, List<MappedReject> rejects)
    {
        if (block.Kind(row, Position) == CellKind.Number)
            return Scale.Apply(block.Number(row, Position));
        var cell = CellText.Trim(block.Cell(row, Position));
        if (Missing.MayBeNumber && Missing.Hold(cell))
            return double.NaN;
        if (IsTimeOfDay ? TimeOfDayText.TryRead(cell, out var value) : Numbers.TryRead(cell, out value))
            return Scale.Apply(value);
        if (!Missing.Hold(cell))
            rejects.Add(new MappedReject(block.Line(row), cell.ToString(), RejectReason.Unparsable, "a number", false, Heading, null));
        return double.NaN;
    }
}
