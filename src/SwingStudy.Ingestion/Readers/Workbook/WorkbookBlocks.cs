namespace SwingStudy.Ingestion.Readers.Workbook;

/// <summary>The rows of a sheet below its headings.</summary>
internal sealed class WorkbookBlocks(Sheets sheets, int sheet, RowLayout layout) : IBlockReader
{
    private readonly int _columns = layout.Columns.Headings.Count;

    /// <inheritdoc/>
    public IEnumerable<RawBlock> Read(RecordCounts counts)
    {
        var builder = new BlockBuilder(_columns);
        var next = layout.FirstLine;
        foreach (var (row, cells) in sheets.Rows(sheet))
        {
            if (row < layout.FirstLine)
                continue;
            for (; next < row; next++)
                builder.Block.SkippedList.Add(new SkippedRecord(next, SkipReason.Blank));
            Take(builder, row, cells);
            next = row + 1;
            if (builder.IsFull)
                yield return builder.Take();
        }

        counts.Lines = next - 1;
        if (builder.HasContent)
            yield return builder.Take();
        else
            builder.Block.Dispose();
    }

    /// <inheritdoc/>
    public void Dispose() => sheets.Dispose();

    private void Take(BlockBuilder builder, int row, SheetCell[] cells)
    {
        if (cells.All(cell => string.IsNullOrWhiteSpace(cell.Text)))
        {
            builder.Block.SkippedList.Add(new SkippedRecord(row, SkipReason.Blank));
            return;
        }

        if (Repeats(cells) is { } reason)
        {
            builder.Block.SkippedList.Add(new SkippedRecord(row, reason));
            return;
        }

        builder.BeginRow();
        for (var column = 0; column < _columns; column++)
        {
            if (column > 0)
                builder.Write("\t");
            var cell = column < cells.Length ? cells[column] : SheetCell.Empty;
            builder.Cell(cell.Text, cell.Kind, cell.Number);
        }

        builder.EndRow(builder.EndRaw(), row);
    }

    private SkipReason? Repeats(SheetCell[] cells)
    {
        var text = string.Join(' ', cells.Where(cell => cell.Text.Length > 0).Select(cell => cell.Text));
        if (layout.HeadingTexts.Contains(text))
            return SkipReason.RepeatedHeading;
        return text == layout.UnitsText ? SkipReason.RepeatedUnits : null;
    }
}
