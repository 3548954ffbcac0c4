using System.Text;
using System.Text.Json;
using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>Log files back into commits. Fields that it does not know are ignored, features that it does not know are refused.</summary>
internal static class LogEntryReader
{
    /// <summary>Reads one log file.</summary>
    /// <exception cref="InvalidDataException">A line is no JSON, or asks for features beyond reader version 1.</exception>
    internal static LogEntry Read(string path, long version)
    {
        var adds = new List<DataFile>();
        var removes = new List<KeyValuePair<string, long>>();
        var applications = new List<KeyValuePair<string, long>>();
        var entry = new LogEntry { Version = version, AtMillis = new DateTimeOffset(File.GetLastWriteTimeUtc(path)).ToUnixTimeMilliseconds() };
        foreach (var line in File.ReadLines(path).Where(line => line.Length > 0))
        {
            using var document = Parse(path, line);
            foreach (var action in document.RootElement.EnumerateObject())
            {
                switch (action.Name)
                {
                    case "add":
                        adds.Add(Add(action.Value));
                        break;
                    case "remove":
                        removes.Add(new(LogPath.Decode(action.Value.GetProperty("path").GetString()!), Millis(action.Value, "deletionTimestamp")));
                        break;
                    case "txn":
                        applications.Add(new(action.Value.GetProperty("appId").GetString()!, action.Value.GetProperty("version").GetInt64()));
                        break;
                    case "metaData":
                        entry = entry with { Table = Metadata(action.Value) };
                        break;
                    case "protocol":
                        CheckReader(path, action.Value.GetProperty("minReaderVersion").GetInt32());
                        entry = entry with { DeclaresProtocol = true };
                        break;
                    case "commitInfo":
                        entry = entry with { AtMillis = Millis(action.Value, "timestamp"), Info = Info(action.Value) };
                        break;
                }
            }
        }

        return entry with { Adds = adds, Removes = removes, Applications = applications };
    }

    /// <summary>Refuses tables that a newer reader would be needed for.</summary>
    /// <exception cref="InvalidDataException"><paramref name="version"/> is above 1.</exception>
    internal static void CheckReader(string path, int version)
    {
        if (version > 1)
            throw new InvalidDataException($"{path} asks for reader version {version} of the table format; this program reads version 1.");
    }

    /// <summary>Rows that statistics tell; 0 when there are none.</summary>
    internal static long Rows(string? statistics)
    {
        if (statistics is null)
            return 0;
        // The number stands first as a rule, before the bounds of every column: the rest is read when it is asked for.
        var json = new Utf8JsonReader(Encoding.UTF8.GetBytes(statistics));
        json.Read();
        while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
        {
            var isRows = json.ValueTextEquals("numRecords");
            json.Read();
            if (isRows)
                return json.GetInt64();
            json.Skip();
        }

        return 0;
    }

    private static JsonDocument Parse(string path, string line)
    {
        try
        {
            return JsonDocument.Parse(line);
        }
        catch (JsonException broken)
        {
            throw new InvalidDataException($"The log file {path} is damaged: {broken.Message}", broken);
        }
    }

    private static long Millis(JsonElement action, string member) =>
        action.TryGetProperty(member, out var value) && value.ValueKind == JsonValueKind.Number ? value.GetInt64() : 0;

    private static DataFile Add(JsonElement add)
    {
        var statistics = add.OptionalText("stats");
        string? partition = null;
        foreach (var value in add.GetProperty("partitionValues").EnumerateObject())
            partition = value.Value.ValueKind == JsonValueKind.Null || value.Value.GetString()!.Length == 0 ? null : value.Value.GetString();
        var hasTags = add.TryGetProperty("tags", out var tags) && tags.ValueKind == JsonValueKind.Object;
        return new DataFile(LogPath.Decode(add.GetProperty("path").GetString()!), partition, hasTags ? tags.OptionalText("unit") ?? "" : "", add.GetProperty("size").GetInt64(),
            Rows(statistics), statistics ?? "{}", Millis(add, "modificationTime"))
        {
            Originals = hasTags ? tags.OptionalText("originals") ?? "" : "",
        };
    }

    private static TableMetadata Metadata(JsonElement table) => new(
        table.GetProperty("id").GetString()!, table.OptionalText("name") ?? "", table.OptionalText("description") ?? "",
        table.GetProperty("schemaString").GetString()!,
        table.GetProperty("partitionColumns").EnumerateArray().Select(column => column.GetString()).FirstOrDefault(),
        Millis(table, "createdTime"));

    private static CommitInfo? Info(JsonElement info)
    {
        if (!info.TryGetProperty("swingstudy", out var own))
            return null;
        return new CommitInfo
        {
            Stage = own.GetProperty("stage").GetString()!,
            CodeVersion = own.OptionalText("codeVersion"),
            RunId = own.OptionalText("runId"),
            DictionaryVersion = own.OptionalText("dictionaryVersion") is { } version ? Version.Parse(version) : null,
            DictionaryHash = own.OptionalText("dictionaryHash") is { } hash ? new Sha256(hash) : null,
            Inputs = own.GetProperty("inputs").EnumerateObject().ToDictionary(input => input.Name, input => input.Value.GetInt64()),
        };
    }
}
