using System.Runtime.InteropServices;
using System.Text.Json;

namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>The records of a JSON document.</summary>
internal sealed class ArrayTexts(JsonDocument document, JsonRecords records, Stream stream) : IRecordTexts
{
    /// <inheritdoc/>
    public IReadOnlyList<PreambleLine> Preamble => records.Preamble;

    /// <inheritdoc/>
    public IEnumerable<RecordText> Read(RecordCounts counts)
    {
        var position = 0;
        foreach (var (element, around) in records.Records)
        {
            var utf8 = JsonMarshal.GetRawUtf8Value(element);
            position++;
            yield return new RecordText(position, utf8.ToArray(), utf8.Length > ReaderLimits.RecordCharacters, around);
        }

        counts.Lines = position;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        document.Dispose();
        stream.Dispose();
    }
}
