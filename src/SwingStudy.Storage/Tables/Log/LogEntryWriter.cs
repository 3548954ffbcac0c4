using System.Text;
using System.Text.Json;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>A commit as the lines of its log file.</summary>
internal static class LogEntryWriter
{
    private const string Engine = "SwingStudy";

    /// <summary>The bytes of the log file.</summary>
    internal static byte[] Write(LogEntry entry)
    {
        var lines = new StringBuilder();
        lines.Append(Info(entry)).Append('\n');
        if (entry.DeclaresProtocol)
            lines.Append("""{"protocol":{"minReaderVersion":1,"minWriterVersion":2}}""").Append('\n');
        if (entry.Table is { } table)
            lines.Append(LogJson.Action("metaData", json => WriteMetadata(json, table))).Append('\n');
        foreach (var (application, number) in entry.Applications)
            lines.Append(Transaction(application, number, entry.AtMillis)).Append('\n');
        var partitionColumn = entry.PartitionColumn;
        foreach (var (path, at) in entry.Removes)
            lines.Append(Remove(path, at)).Append('\n');
        foreach (var file in entry.Adds)
            lines.Append(Add(file, partitionColumn)).Append('\n');
        return Encoding.UTF8.GetBytes(lines.ToString());
    }

    private static string Info(LogEntry entry) => LogJson.Action("commitInfo", json =>
    {
        json.WriteNumber("timestamp", entry.AtMillis);
        json.WriteString("operation", entry.Info?.Stage ?? "write");
        json.WriteString("engineInfo", Engine);
        if (entry.Info is not { } info)
            return;
        json.WriteStartObject("swingstudy");
        json.WriteString("stage", info.Stage);
        json.WriteString("codeVersion", info.CodeVersion);
        json.WriteString("runId", info.RunId);
        json.WriteString("dictionaryVersion", info.DictionaryVersion?.ToString());
        json.WriteString("dictionaryHash", info.DictionaryHash?.ToString());
        json.WriteStartObject("inputs");
        foreach (var (name, version) in info.Inputs.OrderBy(input => input.Key, StringComparer.Ordinal))
            json.WriteNumber(name, version);
        json.WriteEndObject();
        json.WriteEndObject();
    });

    private static void WriteMetadata(Utf8JsonWriter json, TableMetadata table)
    {
        json.WriteString("id", table.Id);
        json.WriteString("name", table.Name);
        json.WriteString("description", table.Description);
        json.WriteStartObject("format");
        json.WriteString("provider", "parquet");
        json.WriteStartObject("options");
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteString("schemaString", table.Schema);
        json.WriteStartArray("partitionColumns");
        if (table.PartitionColumn is not null)
            json.WriteStringValue(table.PartitionColumn);
        json.WriteEndArray();
        json.WriteStartObject("configuration");
        json.WriteEndObject();
        json.WriteNumber("createdTime", table.CreatedMillis);
    }

    private static string Transaction(string application, long number, long atMillis) => LogJson.Action("txn", json =>
    {
        json.WriteString("appId", application);
        json.WriteNumber("version", number);
        json.WriteNumber("lastUpdated", atMillis);
    });

    private static string Remove(string path, long atMillis) => LogJson.Action("remove", json =>
    {
        json.WriteString("path", LogPath.Encode(path));
        json.WriteNumber("deletionTimestamp", atMillis);
        json.WriteBoolean("dataChange", true);
    });

    private static string Add(DataFile file, string? partitionColumn) => LogJson.Action("add", json =>
    {
        json.WriteString("path", LogPath.Encode(file.Path));
        json.WriteStartObject("partitionValues");
        if (partitionColumn is not null)
            json.WriteString(partitionColumn, file.Partition);
        json.WriteEndObject();
        json.WriteNumber("size", file.Size);
        json.WriteNumber("modificationTime", file.ModifiedMillis);
        json.WriteBoolean("dataChange", true);
        json.WriteString("stats", file.Statistics);
        json.WriteStartObject("tags");
        json.WriteString("unit", file.Unit);
        if (file.Originals.Length > 0)
            json.WriteString("originals", file.Originals);
        json.WriteEndObject();
    });
}
