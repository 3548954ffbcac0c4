using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>JSON as the log holds it: one line an action, no needless escapes.</summary>
internal static class LogJson
{
    private static readonly JsonWriterOptions Compact = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>What <paramref name="write"/> writes, as text.</summary>
    internal static string Text(Action<Utf8JsonWriter> write)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Compact))
            write(json);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    /// <summary>An object with one member, as every line of the log is.</summary>
    internal static string Action(string name, Action<Utf8JsonWriter> members) => Text(json =>
    {
        json.WriteStartObject();
        json.WriteStartObject(name);
        members(json);
        json.WriteEndObject();
        json.WriteEndObject();
    });

    /// <summary>The member's text; null when it is absent or null.</summary>
    internal static string? OptionalText(this JsonElement element, string member) =>
        element.TryGetProperty(member, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
}
