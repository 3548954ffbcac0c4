using System.Text;
using SwingStudy.Domain.Problems;

namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>The records of a JSON file as rows of one cell a key.</summary>
internal sealed class JsonBlocks(IRecordTexts texts, JsonColumns columns, string file) : IBlockReader
{
    /// <summary>Reads all records for their keys alone.</summary>
    public void FindColumns()
    {
        var parser = new JsonRecordParser(columns, mayAddColumns: true);
        foreach (var record in texts.Read(new RecordCounts()))
        {
            if (!record.TooLong)
                parser.Parse(record.Utf8.Span, record.Around);
        }
    }

    /// <inheritdoc/>
    public IEnumerable<RawBlock> Read(RecordCounts counts)
    {
        var parser = new JsonRecordParser(columns, mayAddColumns: false);
        var builder = new BlockBuilder(columns.Paths.Count);
        var places = new int[columns.Paths.Count];
        foreach (var record in texts.Read(counts))
        {
            Take(record, parser, builder, places);
            if (builder.IsFull)
                yield return builder.Take();
        }

        if (builder.HasContent)
            yield return builder.Take();
        else
            builder.Block.Dispose();
    }

    /// <inheritdoc/>
    public void Dispose() => texts.Dispose();

    private void Take(RecordText record, JsonRecordParser parser, BlockBuilder builder, int[] places)
    {
        if (!record.Utf8.Span.ContainsAnyExcept(" \t\r\n"u8))
        {
            builder.Block.SkippedList.Add(new SkippedRecord(record.Line, SkipReason.Blank));
            return;
        }

        if (record.TooLong)
        {
            builder.Block.RejectedList.Add(new RejectedRecord(record.Line, Shown(record), [], ReaderMessages.RecordTooLong(file, record.Line)));
            return;
        }

        if (parser.Parse(record.Utf8.Span, record.Around) is { } fault)
        {
            var raw = Shown(record);
            var problem = new Problem(fault.Code, new(file, record.Line), $"{fault.Found}, in '{ReaderMessages.Short(raw)}'", fault.Expected, ReaderMessages.MendRecord);
            builder.Block.RejectedList.Add(new RejectedRecord(record.Line, raw, [], problem));
            return;
        }

        builder.BeginRow();
        builder.Write(Encoding.UTF8.GetString(record.Utf8.Span));
        var end = builder.EndRaw();
        Array.Fill(places, -1);
        for (var i = 0; i < parser.Cells.Count; i++)
            places[parser.Cells[i].Column] = i;
        foreach (var place in places)
        {
            if (place < 0)
                builder.Cell([], CellKind.Empty);
            else
                builder.Cell(parser.TextOf(parser.Cells[place]), parser.Cells[place].Kind, parser.Cells[place].Number);
        }

        builder.EndRow(end, record.Line);
    }

    private static string Shown(RecordText record)
    {
        var text = Encoding.UTF8.GetString(record.Utf8.Span);
        return text.Length <= ReaderLimits.RawCharacters ? text : string.Concat(text.AsSpan(0, ReaderLimits.RawCharacters - 1), "…");
    }
}
