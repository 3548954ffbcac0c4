using System.Text;
using ExcelDataReader;
using SwingStudy.Ingestion.Readers.Delimited;

namespace SwingStudy.Ingestion.Readers.Workbook;

/// <summary>Goes through the rows of sheets.</summary>
internal sealed class Sheets(Stream stream, WorkbookParts parts) : IDisposable
{
    // Before the configuration, whose own default needs the code pages that this registers.
    private static readonly Encoding Fallback = Encodings.Get(Encodings.Fallback);
    private static readonly ExcelReaderConfiguration Configuration = new() { LeaveOpen = true, FallbackEncoding = Fallback };

    /// <summary>Rows of one sheet, from its first: row number from 1 and cells, none behind the last filled one.</summary>
    public IEnumerable<(int Row, SheetCell[] Cells)> Rows(int sheet)
    {
        using var reader = Open();
        for (var i = 0; i < sheet; i++)
            reader.NextResult();
        while (reader.Read())
        {
            var cells = new SheetCell[Math.Min(reader.FieldCount, ReaderLimits.Columns)];
            var filled = 0;
            for (var column = 0; column < cells.Length; column++)
            {
                cells[column] = SheetCell.Of(reader, column, parts);
                if (cells[column].Kind != CellKind.Empty)
                    filled = column + 1;
            }

            yield return (reader.Depth + 1, cells[..filled]);
        }
    }

    /// <summary>Reads the whole workbook once: names and heads of its sheets.</summary>
    public IReadOnlyList<SheetHead> Heads()
    {
        List<string> names = [];
        using (var reader = Open())
        {
            do
                names.Add(reader.Name);
            while (reader.NextResult());
        }

        return [.. names.Select((name, i) => Head(name, i))];
    }

    /// <inheritdoc/>
    public void Dispose() => stream.Dispose();

    private SheetHead Head(string name, int index)
    {
        List<HeadRecord> records = [];
        var columns = 0;
        foreach (var (row, cells) in Rows(index))
        {
            columns = Math.Max(columns, cells.Length);
            if (records.Count < ReaderLimits.HeadingSearchRecords)
                records.Add(new HeadRecord(row, row + 1, string.Join(' ', cells.Where(cell => cell.Text.Length > 0).Select(cell => cell.Text)), [.. cells.Select(cell => cell.Text)]));
        }

        return new SheetHead(index, name, records, columns);
    }

    private IExcelDataReader Open()
    {
        stream.Position = 0;
        return ExcelReaderFactory.CreateReader(stream, Configuration);
    }
}
