using System.Text.Json;

namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>Finds the records of a document by the path to them, through arrays too: <c>sessions.shots</c> are the shots of all sessions.</summary>
/// <param name="Records">The records, each with what stands around it.</param>
/// <param name="Preamble">Values of the document outside all records, one line each, such as <c>meta.player: Ada</c>.</param>
internal sealed record JsonRecords(IReadOnlyList<JsonPlacedRecord> Records, IReadOnlyList<PreambleLine> Preamble)
{
    private const int MostPreambleLines = 200;

    /// <summary>The records; null when the path leads to no array.</summary>
    public static JsonRecords? Find(JsonElement root, string? path)
    {
        string[] names = path?.Split('.') ?? [];
        List<(JsonElement Element, byte[]? Around)> found = [(root, null)];
        for (var depth = 0; depth < names.Length; depth++)
        {
            var prefix = names[..depth];
            found = [.. found.SelectMany(item => item.Element.ValueKind == JsonValueKind.Array ? Items(item.Element, item.Around, prefix) : [item])];
            List<(JsonElement, byte[]?)> next = [];
            foreach (var (element, around) in found)
            {
                if (element.ValueKind == JsonValueKind.Object && element.TryGetProperty(names[depth], out var inner))
                    next.Add((inner, around));
            }

            found = next;
        }

        if (found.Count == 0 || found.Exists(item => item.Element.ValueKind != JsonValueKind.Array))
            return null;
        return new JsonRecords([.. found.SelectMany(item => item.Element.EnumerateArray().Select(record => new JsonPlacedRecord(record, item.Around)))], Above(root));
    }

    /// <summary>The objects of an array on the way, each with its own values under the path to it.</summary>
    private static IEnumerable<(JsonElement Element, byte[]? Around)> Items(JsonElement array, byte[]? around, string[] prefix)
    {
        foreach (var item in array.EnumerateArray())
            yield return (item, item.ValueKind == JsonValueKind.Object ? Merged(around, item, prefix) : around);
    }

    private static byte[] Merged(byte[]? around, JsonElement item, string[] prefix)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream))
        {
            writer.WriteStartObject();
            if (around is not null)
            {
                using var outer = JsonDocument.Parse(around);
                WriteValues(writer, outer.RootElement);
            }

            // A name of its own for each level, dotted as the headings are.
            writer.WritePropertyName(string.Join('.', prefix));
            writer.WriteStartObject();
            WriteValues(writer, item);
            writer.WriteEndObject();
            writer.WriteEndObject();
        }

        return stream.ToArray();
    }

    private static void WriteValues(Utf8JsonWriter writer, JsonElement element)
    {
        foreach (var property in element.EnumerateObject().Where(property => property.Value.ValueKind != JsonValueKind.Array))
        {
            writer.WritePropertyName(property.Name);
            if (property.Value.ValueKind != JsonValueKind.Object)
            {
                property.Value.WriteTo(writer);
                continue;
            }

            writer.WriteStartObject();
            WriteValues(writer, property.Value);
            writer.WriteEndObject();
        }
    }

    private static List<PreambleLine> Above(JsonElement root)
    {
        var lines = new List<PreambleLine>();
        Add(root, null);
        return lines;

        void Add(JsonElement element, string? path)
        {
            if (element.ValueKind == JsonValueKind.Object)
            {
                foreach (var property in element.EnumerateObject())
                    Add(property.Value, path is null ? property.Name : $"{path}.{property.Name}");
            }
            else if (element.ValueKind is not (JsonValueKind.Array or JsonValueKind.Null) && path is not null && lines.Count < MostPreambleLines)
            {
                lines.Add(new PreambleLine(lines.Count + 1, $"{path}: {element}"));
            }
        }
    }
}
