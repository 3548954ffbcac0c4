using System.Text.Json;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>Column definitions as the <c>schemaString</c> of a Delta table: Spark's JSON form of a struct.</summary>
internal static class SchemaText
{
    /// <summary>The JSON text; titles and units stand in the metadata of each field.</summary>
    internal static string Write(TableDefinition table) => LogJson.Text(json =>
    {
        json.WriteStartObject();
        json.WriteString("type", "struct");
        json.WriteStartArray("fields");
        foreach (var column in table.Columns)
            WriteField(json, column);
        json.WriteEndArray();
        json.WriteEndObject();
    });

    /// <summary>The columns back.</summary>
    /// <exception cref="InvalidDataException">A type that study tables do not have.</exception>
    internal static IReadOnlyList<ColumnDefinition> Read(string schema)
    {
        using var document = JsonDocument.Parse(schema);
        return [.. document.RootElement.GetProperty("fields").EnumerateArray().Select(ReadField)];
    }

    private static void WriteField(Utf8JsonWriter json, ColumnDefinition column)
    {
        json.WriteStartObject();
        json.WriteString("name", column.Name);
        if (column.Kind == ColumnKind.NumberList)
        {
            json.WriteStartObject("type");
            json.WriteString("type", "array");
            json.WriteString("elementType", "double");
            json.WriteBoolean("containsNull", true);
            json.WriteEndObject();
        }
        else
        {
            json.WriteString("type", Name(column.Kind));
        }

        json.WriteBoolean("nullable", true);
        json.WriteStartObject("metadata");
        json.WriteString("comment", column.Unit is null ? column.Title : $"{column.Title} [{column.Unit}]");
        json.WriteString("title", column.Title);
        if (column.Unit is not null)
            json.WriteString("unit", column.Unit);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static ColumnDefinition ReadField(JsonElement field)
    {
        var name = field.GetProperty("name").GetString()!;
        var metadata = field.GetProperty("metadata");
        var type = field.GetProperty("type");
        return new ColumnDefinition(name, Kind(name, type),
            metadata.TryGetProperty("title", out var title) ? title.GetString()! : name,
            metadata.TryGetProperty("unit", out var unit) ? unit.GetString() : null);
    }

    private static string Name(ColumnKind kind) => kind switch
    {
        ColumnKind.Text => "string",
        ColumnKind.Number => "double",
        ColumnKind.Integer => "long",
        ColumnKind.Boolean => "boolean",
        ColumnKind.Instant => "timestamp",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind of column."),
    };

    private static ColumnKind Kind(string column, JsonElement type) => type.ValueKind == JsonValueKind.String
        ? type.GetString() switch
        {
            "string" => ColumnKind.Text,
            "double" => ColumnKind.Number,
            "long" => ColumnKind.Integer,
            "boolean" => ColumnKind.Boolean,
            "timestamp" => ColumnKind.Instant,
            var other => throw new InvalidDataException($"Column '{column}' has the type '{other}', which no study table has."),
        }
        : type.GetProperty("type").GetString() == "array" && type.GetProperty("elementType").ValueEquals("double")
            ? ColumnKind.NumberList
            : throw new InvalidDataException($"Column '{column}' has the type {type.GetRawText()}, which no study table has.");
}
