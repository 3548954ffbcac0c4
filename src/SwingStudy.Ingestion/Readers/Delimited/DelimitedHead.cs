namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>Reads the beginning of a text.</summary>
internal static class DelimitedHead
{
    private const int FirstCharacters = 16 * 1024;
    private const int MostCharacters = 4 << 20;

    /// <summary>The first records of a stream, each read when it is asked for.</summary>
    public static IEnumerable<HeadRecord> Read(Stream stream, FoundEncoding encoding, char? delimiter, string file)
    {
        var count = 0;
        var characters = 0;
        var source = new RecordStream(stream, encoding, delimiter) { FirstCharacters = FirstCharacters };
        foreach (var block in source.Read(RecordSink.ForAnything(file), 1, 0))
        {
            using (block)
            {
                for (var row = 0; row < block.RowCount; row++)
                {
                    var record = Record(block, row, row + 1 < block.RowCount ? block.Line(row + 1) : source.Line);
                    yield return record;
                    count++;
                    characters += record.Raw.Length;
                    if (count == ReaderLimits.HeadingSearchRecords || characters > MostCharacters)
                        yield break;
                }
            }
        }
    }

    private static HeadRecord Record(RawBlock block, int row, int next)
    {
        var cells = new string[Math.Min(block.CellsOf(row), ReaderLimits.Columns + 1)];
        for (var i = 0; i < cells.Length; i++)
            cells[i] = block.Cell(row, i).ToString();
        var raw = block.Raw(row).IsEmpty && cells.Length == 1 ? cells[0] : block.Raw(row).ToString();
        return new HeadRecord(block.Line(row), next, raw, cells);
    }
}
