using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using NodaTime;
using SwingStudy.Domain.Codebooks;
using SwingStudy.Domain.Tables;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Pipeline.Export;

/// <summary>Describes an export as a Frictionless Data Package (version 2): one resource a CSV file, with a Table Schema of types, units and limits.</summary>
internal static class DataPackage
{
    private static readonly JsonSerializerOptions Json = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of <c>datapackage.json</c>.</summary>
    public static string Describe(string name, string title, Instant created, VariableDictionary dictionary, IReadOnlyList<ExportedTable> tables)
    {
        var package = new JsonObject
        {
            ["$schema"] = "https://datapackage.org/profiles/2.0/datapackage.json",
            ["name"] = name,
            ["title"] = title,
            ["created"] = created.ToString("uuuu-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture),
            ["dictionary"] = new JsonObject
            {
                ["name"] = dictionary.Name,
                ["version"] = dictionary.Version.ToString(),
                ["hash"] = $"sha256:{dictionary.Hash}",
            },
            ["resources"] = new JsonArray([.. tables.SelectMany(table => table.Files.Select(file => Resource(table, file, dictionary)))]),
        };
        return package.ToJsonString(Json) + "\n";
    }

    private static JsonObject Resource(ExportedTable table, ExportedFile file, VariableDictionary dictionary)
    {
        var resource = new JsonObject
        {
            ["name"] = file.Format == "csv" ? table.Table.Name : $"{table.Table.Name}-{file.Format}",
            ["description"] = $"A row is {table.Table.RowMeaning}.",
            ["path"] = file.Path,
            ["format"] = file.Format,
            ["mediatype"] = MediaType.Of(file.Format),
            ["bytes"] = file.Bytes,
            ["hash"] = $"sha256:{file.Hash}",
            ["rows"] = table.RowCount,
        };
        if (table.Version is { } version)
            resource["table_version"] = version;
        if (file.Format == "csv")
        {
            resource["type"] = "table";
            resource["encoding"] = "utf-8";
            resource["schema"] = Schema(table.Table, dictionary);
        }

        return resource;
    }

    private static JsonObject Schema(TableDefinition table, VariableDictionary dictionary) => new()
    {
        ["fields"] = new JsonArray([.. table.Columns.Select(column => Field(column, dictionary))]),
        ["missingValues"] = new JsonArray(""),
    };

    /// <summary>A variable of the dictionary is described as the codebook describes it; other columns by what the table says of them.</summary>
    private static JsonNode Field(ColumnDefinition column, VariableDictionary dictionary)
    {
        if (dictionary.TryGet(column.Name, out var variable))
        {
            using var stream = new MemoryStream();
            using (var json = new Utf8JsonWriter(stream))
                TableSchemaCodebook.WriteField(json, variable);
            return JsonNode.Parse(stream.ToArray())!;
        }

        var field = new JsonObject { ["name"] = column.Name, ["type"] = FieldType(column.Kind), ["title"] = column.Title };
        if (column.Unit is { } unit)
            field["unit"] = unit;
        return field;
    }

    private static string FieldType(ColumnKind kind) => kind switch
    {
        ColumnKind.Text => "string",
        ColumnKind.Number => "number",
        ColumnKind.Integer => "integer",
        ColumnKind.Boolean => "boolean",
        ColumnKind.Instant => "datetime",
        ColumnKind.NumberList => "array",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind of column."),
    };
}
