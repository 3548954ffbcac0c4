namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>The rows of a delimited text.</summary>
internal sealed class DelimitedBlocks(Stream stream, FoundEncoding encoding, char? delimiter, RowLayout layout, string file) : IBlockReader
{
    /// <inheritdoc/>
    public IEnumerable<RawBlock> Read(RecordCounts counts)
    {
        var records = new RecordStream(stream, encoding, delimiter);
        var sink = RecordSink.ForRows(file, layout, delimiter);
        foreach (var block in records.Read(sink, layout.FirstLine, layout.Columns.Headings.Count))
        {
            counts.Lines = records.Line - 1;
            yield return block;
        }

        counts.Lines = records.Line - 1;
    }

    /// <inheritdoc/>
    public void Dispose() => stream.Dispose();
}
