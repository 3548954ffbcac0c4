using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace SwingStudy.Storage.Registry;

/// <summary>JSON with one spelling for one meaning, so that it can be hashed: members in order of their UTF-16 code units, no blanks,
/// shortest numbers, only the escapes that JSON demands. Source: RFC 8785 (JSON Canonicalization Scheme).</summary>
public static class CanonicalJson
{
    private static readonly JsonWriterOptions Compact = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The canonical form of a JSON text.</summary>
    /// <exception cref="JsonException">No JSON.</exception>
    public static string Of(string json)
    {
        using var document = JsonDocument.Parse(json);
        return Of(document.RootElement);
    }

    /// <summary>The canonical form of a JSON value.</summary>
    public static string Of(JsonElement element)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, Compact))
            Write(writer, element);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    private static void Write(Utf8JsonWriter writer, JsonElement element)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                writer.WriteStartObject();
                foreach (var member in element.EnumerateObject().OrderBy(member => member.Name, StringComparer.Ordinal))
                {
                    writer.WritePropertyName(member.Name);
                    Write(writer, member.Value);
                }

                writer.WriteEndObject();
                break;
            case JsonValueKind.Array:
                writer.WriteStartArray();
                foreach (var item in element.EnumerateArray())
                    Write(writer, item);
                writer.WriteEndArray();
                break;
            case JsonValueKind.Number:
                writer.WriteRawValue(CanonicalNumber.Of(element.GetDouble()));
                break;
            case JsonValueKind.String:
                writer.WriteRawValue(CanonicalText.Quote(element.GetString()!));
                break;
            default:
                element.WriteTo(writer);
                break;
        }
    }
}
