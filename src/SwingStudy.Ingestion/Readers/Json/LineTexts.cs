using System.Text;
using SwingStudy.Ingestion.Readers.Delimited;

namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>The lines of an NDJSON file, streamed.</summary>
internal sealed class LineTexts(Stream stream, FoundEncoding encoding, string file) : IRecordTexts
{
    /// <inheritdoc/>
    public IReadOnlyList<PreambleLine> Preamble => [];

    /// <inheritdoc/>
    public IEnumerable<RecordText> Read(RecordCounts counts)
    {
        var records = new RecordStream(stream, encoding, null, hasQuotes: false);
        var utf8 = new byte[4096];
        foreach (var block in records.Read(RecordSink.ForAnything(file), 1, 1))
        {
            using (block)
            {
                for (var row = 0; row < block.RowCount; row++)
                {
                    // A row without raw text but with a cell is the beginning of a line that is too long.
                    var isCut = block.Raw(row).IsEmpty && !block.Cell(row, 0).IsEmpty;
                    var text = block.Cell(row, 0);
                    if (utf8.Length < Encoding.UTF8.GetMaxByteCount(text.Length))
                        utf8 = new byte[Encoding.UTF8.GetMaxByteCount(text.Length)];
                    var length = Encoding.UTF8.GetBytes(text, utf8);
                    yield return new RecordText(block.Line(row), utf8.AsMemory(0, length), isCut || text.Length > ReaderLimits.RecordCharacters);
                }
            }

            counts.Lines = records.Line - 1;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => stream.Dispose();
}
