using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Redaction;

/// <summary>The records of a document that are one person's.</summary>
/// <param name="Starts">Line or row on which each begins.</param>
/// <param name="Lines">All lines they stand on.</param>
internal sealed record PersonRecords(IReadOnlySet<int> Starts, IReadOnlySet<int> Lines)
{
    /// <summary>Finds them: by the cell that names the player, by the lines that are known, and, for records that could not be divided, by their text.</summary>
    public static PersonRecords Of(RecordDocument document, SourceMapping mapping, PersonTexts person, IReadOnlySet<int> known)
    {
        var column = mapping.Participant?.Column is { } heading ? document.Columns.Find(heading)?.Position : null;
        var (starts, lines) = (new HashSet<int>(), new HashSet<int>());
        foreach (var block in document.Blocks())
        {
            using (block)
            {
                for (var row = 0; row < block.RowCount; row++)
                {
                    if (known.Contains(block.Line(row)) || (column is { } player && person.Is(block.Cell(row, player).ToString())))
                        Add(block.Line(row), block.Raw(row));
                }

                foreach (var rejected in block.Rejected)
                {
                    if (known.Contains(rejected.Line) || person.IsNamedIn(rejected.Raw) || rejected.Cells.Any(person.Is))
                        Add(rejected.Line, rejected.Raw);
                }
            }
        }

        return new PersonRecords(starts, lines);

        void Add(int line, ReadOnlySpan<char> raw)
        {
            starts.Add(line);
            for (var i = 0; i <= (mapping.Reader is ReaderKind.Delimited ? LineBreaks.In(raw) : 0); i++)
                lines.Add(line + i);
        }
    }
}
