using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using NodaTime;

namespace SwingStudy.Pipeline.Export;

/// <summary>Describes an export as an RO-Crate: a flat JSON-LD graph of the folder and its files.</summary>
/// <remarks>Source: RO-Crate Metadata Specification 1.2: the descriptor names the version it conforms to, the root holds name, description, date and licence.</remarks>
internal static class ResearchCrate
{
    /// <summary>Name that the specification gives the file.</summary>
    public const string FileName = "ro-crate-metadata.json";

    private const string NoLicense = "No licence is granted with this export; ask the study.";
    private static readonly JsonSerializerOptions Json = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of <see cref="FileName"/>.</summary>
    /// <param name="title">Name of the export.</param>
    /// <param name="description">What it is.</param>
    /// <param name="license">Licence, as an address or a sentence; null: none.</param>
    /// <param name="created">When it was written.</param>
    /// <param name="tables">Exported tables.</param>
    /// <param name="documents">Other files of the folder with a sentence about each.</param>
    public static string Describe(
        string title, string description, string? license, Instant created, IReadOnlyList<ExportedTable> tables, IReadOnlyList<(string Path, string About)> documents)
    {
        var files = new List<JsonObject>();
        foreach (var table in tables)
        {
            foreach (var file in table.Files)
            {
                files.Add(new JsonObject
                {
                    ["@id"] = file.Path,
                    ["@type"] = "File",
                    ["name"] = table.Table.Name,
                    ["description"] = $"A row is {table.Table.RowMeaning}.",
                    ["encodingFormat"] = MediaType.Of(file.Format),
                    ["contentSize"] = file.Bytes.ToString(CultureInfo.InvariantCulture),
                    ["sha256"] = file.Hash.ToString(),
                });
            }
        }

        files.AddRange(documents.Select(document => new JsonObject { ["@id"] = document.Path, ["@type"] = "File", ["name"] = document.Path, ["description"] = document.About }));
        var terms = Uri.TryCreate(license, UriKind.Absolute, out var address) ? address.ToString() : null;
        var root = new JsonObject
        {
            ["@id"] = "./",
            ["@type"] = "Dataset",
            ["name"] = title,
            ["description"] = description,
            ["datePublished"] = created.ToString("uuuu-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture),
            ["license"] = terms is null ? license ?? NoLicense : Reference(terms),
            ["hasPart"] = new JsonArray([.. files.Select(file => Reference(file["@id"]!.GetValue<string>()))]),
        };
        var descriptor = new JsonObject
        {
            ["@id"] = FileName,
            ["@type"] = "CreativeWork",
            ["about"] = Reference("./"),
            ["conformsTo"] = Reference("https://w3id.org/ro/crate/1.2"),
        };
        var graph = new JsonArray([descriptor, root, .. files]);
        if (terms is not null)
            graph.Add(new JsonObject { ["@id"] = terms, ["@type"] = "CreativeWork", ["name"] = "Licence" });
        return new JsonObject { ["@context"] = "https://w3id.org/ro/crate/1.2/context", ["@graph"] = graph }.ToJsonString(Json) + "\n";
    }

    private static JsonObject Reference(string id) => new() { ["@id"] = id };
}
