using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Tests.Readers;

/// <summary>A document read to its end, as plain lists.</summary>
internal sealed record Contents(
    RecordDocument Document,
    IReadOnlyList<string[]> Rows,
    IReadOnlyList<int> Lines,
    IReadOnlyList<string> Raw,
    IReadOnlyList<RejectedRecord> Rejected,
    IReadOnlyList<SkippedRecord> Skipped,
    IReadOnlyList<CellKind[]> Kinds,
    IReadOnlyList<double[]> Numbers)
{
    public static Contents Of(RecordDocument document)
    {
        var contents = new Contents(document, [], [], [], [], [], [], []);
        List<string[]> rows = [];
        List<int> lines = [];
        List<string> raw = [];
        List<RejectedRecord> rejected = [];
        List<SkippedRecord> skipped = [];
        List<CellKind[]> kinds = [];
        List<double[]> numbers = [];
        using (document)
        {
            foreach (var block in document.Blocks())
            {
                using (block)
                {
                    var columns = Enumerable.Range(0, block.ColumnCount).ToArray();
                    for (var row = 0; row < block.RowCount; row++)
                    {
                        rows.Add([.. columns.Select(column => block.Cell(row, column).ToString())]);
                        kinds.Add([.. columns.Select(column => block.Kind(row, column))]);
                        numbers.Add([.. columns.Select(column => block.Number(row, column))]);
                        lines.Add(block.Line(row));
                        raw.Add(block.Raw(row).ToString());
                    }

                    rejected.AddRange(block.Rejected);
                    skipped.AddRange(block.Skipped);
                }
            }
        }

        return contents with { Rows = rows, Lines = lines, Raw = raw, Rejected = rejected, Skipped = skipped, Kinds = kinds, Numbers = numbers };
    }

    public string[] Names => [.. Document.Columns.Headings.Select(heading => heading.Name)];
}
