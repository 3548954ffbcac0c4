using System.Text.Json.Serialization;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>Action <c>remove</c>.</summary>
internal sealed class CheckpointRemove
{
    [JsonPropertyName("path")]
    public string? Path { get; set; }

    [JsonPropertyName("deletionTimestamp")]
    public long DeletedMillis { get; set; }

    [JsonPropertyName("dataChange")]
    public bool DataChange { get; set; }
}
