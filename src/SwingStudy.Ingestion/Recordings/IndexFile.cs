using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>The rows of a table that lies beside recordings, by the names of their files.</summary>
internal sealed class IndexFile
{
    private readonly HeadingRow _headings;
    private readonly Dictionary<string, string[]> _rows = new(StringComparer.OrdinalIgnoreCase);

    private IndexFile(HeadingRow headings) => _headings = headings;

    /// <summary>Records of the table, headings included.</summary>
    public long Records { get; private set; }

    /// <summary>Reads a table; two rows of one file hold it.</summary>
    public static Outcome<IndexFile> Read(Stream stream, string name, SourceMapping mapping, IndexTable table)
    {
        if (!RecordReaders.Open(stream, name, AsRows(mapping, table)).Succeeded(out var document, out var problems))
            return Outcome<IndexFile>.Failed(problems);
        using (document)
        {
            var index = new IndexFile(document.Columns);
            if (document.Columns.Find(table.NameColumn) is not { } names)
                return RecordingMessages.IndexColumnMissing(name, table.NameColumn, document.Columns, mapping);
            foreach (var block in document.Blocks())
            {
                using (block)
                {
                    for (var row = 0; row < block.RowCount; row++)
                    {
                        string[] cells = [.. Enumerable.Range(0, block.ColumnCount).Select(column => CellText.Trim(block.Cell(row, column)).ToString())];
                        if (!index._rows.TryAdd(Path.GetFileName(cells[names.Position].Replace('\\', '/')), cells))
                            return RecordingMessages.IndexTwice(name, block.Line(row), cells[names.Position]);
                    }
                }
            }

            index.Records = document.Counts.Records;
            return index;
        }
    }

    /// <summary>The row of a file, by its name with or without its ending; null when it is not listed.</summary>
    public IndexRow? RowOf(string file)
    {
        var name = Path.GetFileName(file);
        return _rows.TryGetValue(name, out var cells) || _rows.TryGetValue(Path.GetFileNameWithoutExtension(name), out cells)
            ? new IndexRow(heading => _headings.Find(heading) is { } found ? cells[found.Position] : null)
            : null;
    }

    /// <summary>A mapping that reads nothing but the columns of the table.</summary>
    private static SourceMapping AsRows(SourceMapping mapping, IndexTable table)
    {
        var recording = mapping.Recording!;
        FieldSource?[] fields = [.. mapping.Time.Parts, mapping.Participant, mapping.Sequence, recording.Trigger, recording.Handedness];
        return mapping with
        {
            Reader = ReaderKind.Delimited,
            Text = table.Text with { Decimal = table.Text.Decimal ?? '.' },
            Layout = new Layout(),
            NotData = [],
            Participant = new FieldSource { Column = table.NameColumn },
            Time = mapping.Time with { Parts = [.. fields.Select(field => field?.Index).OfType<string>().Distinct().Select(heading => new FieldSource { Column = heading })] },
            Sequence = null,
            Recording = null,
        };
    }
}
