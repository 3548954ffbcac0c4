using System.Runtime.InteropServices;
using System.Text.Json;

namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>The elements of an array in a JSON document.</summary>
internal sealed class ArrayTexts(JsonDocument document, JsonElement array, Stream stream) : IRecordTexts
{
    /// <inheritdoc/>
    public IEnumerable<RecordText> Read(RecordCounts counts)
    {
        var position = 0;
        foreach (var element in array.EnumerateArray())
        {
            var utf8 = JsonMarshal.GetRawUtf8Value(element);
            position++;
            yield return new RecordText(position, utf8.ToArray(), utf8.Length > ReaderLimits.RecordCharacters);
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
