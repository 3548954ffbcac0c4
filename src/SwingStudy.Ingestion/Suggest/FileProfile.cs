using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>What all rows of a file look like, column by column.</summary>
/// <param name="Columns">Profiles in the order of the columns.</param>
/// <param name="Rows">Rows that are no footers.</param>
/// <param name="Footers">First cells of rows that sum up others.</param>
internal sealed record FileProfile(IReadOnlyList<ColumnProfile> Columns, int Rows, IReadOnlyList<string> Footers)
{
    /// <summary>The sign between thousands that most cells have; null where none has one.</summary>
    public char? Thousands => Columns.SelectMany(column => column.Thousands).GroupBy(pair => pair.Key).OrderByDescending(group => group.Sum(pair => pair.Value)).FirstOrDefault()?.Key;

    /// <summary>Reads the document to its end.</summary>
    /// <param name="document">The document.</param>
    /// <param name="hasGroups">Whether headings stand under groups.</param>
    public static FileProfile Of(RecordDocument document, bool hasGroups = false)
    {
        var numbers = new CellNumbers(document.Decimal);
        var columns = document.Columns.Headings.Select(heading => new ColumnProfile(heading, numbers, hasGroups)).ToList();
        var footers = new List<string>();
        var rows = 0;
        foreach (var block in document.Blocks())
        {
            using (block)
            {
                for (var row = 0; row < block.RowCount; row++)
                {
                    if (FirstText(block, row) is { } first && RoleWords.IsFooter(first))
                    {
                        Note(footers, first);
                        continue;
                    }

                    rows++;
                    foreach (var column in columns)
                    {
                        var at = column.Heading.Position;
                        column.Observe(block.Cell(row, at), block.Kind(row, at), block.Number(row, at));
                    }
                }

                foreach (var reject in block.Rejected)
                {
                    if (reject.Cells.FirstOrDefault(cell => !string.IsNullOrWhiteSpace(cell)) is { } first && RoleWords.IsFooter(first))
                        Note(footers, first.Trim());
                }
            }
        }

        return new FileProfile(columns, rows, footers);
    }

    private static void Note(List<string> footers, string text)
    {
        if (!footers.Contains(text, StringComparer.OrdinalIgnoreCase))
            footers.Add(text);
    }

    private static string? FirstText(RawBlock block, int row)
    {
        for (var column = 0; column < block.ColumnCount; column++)
        {
            var cell = block.Cell(row, column).Trim();
            if (!cell.IsEmpty)
                return cell.Length <= 40 && char.IsLetter(cell[0]) ? cell.ToString() : null;
        }

        return null;
    }
}
