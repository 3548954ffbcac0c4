namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>Reads the beginning of a text.</summary>
internal static class HeadRecords
{
    private const int MostCharacters = 4 << 20;

    /// <summary>The first records of a stream.</summary>
    public static IReadOnlyList<HeadRecord> Read(Stream stream, FoundEncoding encoding, char? delimiter, string file)
    {
        var records = new List<HeadRecord>();
        var characters = 0;
        var source = new RecordStream(stream, encoding, delimiter);
        foreach (var block in source.Read(RecordSink.ForAnything(file), 1, 0))
        {
            using (block)
            {
                for (var row = 0; row < block.RowCount; row++)
                {
                    var cells = new string[Math.Min(block.CellsOf(row), ReaderLimits.Columns + 1)];
                    for (var i = 0; i < cells.Length; i++)
                        cells[i] = block.Cell(row, i).ToString();
                    var raw = block.Raw(row).IsEmpty && cells.Length == 1 ? cells[0] : block.Raw(row).ToString();
                    var next = row + 1 < block.RowCount ? block.Line(row + 1) : source.Line;
                    records.Add(new HeadRecord(block.Line(row), next, raw, cells));
                    characters += raw.Length;
                    if (records.Count == ReaderLimits.HeadingSearchRecords || characters > MostCharacters)
                        return records;
                }
            }
        }

        return records;
    }
}
