using System.Text.Json.Serialization;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>Action <c>add</c>.</summary>
internal sealed class CheckpointAdd
{
    [JsonPropertyName("path")]
    public string? Path { get; set; }

    [JsonPropertyName("partitionValues")]
    public Dictionary<string, string?>? PartitionValues { get; set; }

    [JsonPropertyName("size")]
    public long Size { get; set; }

    [JsonPropertyName("modificationTime")]
    public long ModifiedMillis { get; set; }

    [JsonPropertyName("dataChange")]
    public bool DataChange { get; set; }

    [JsonPropertyName("tags")]
    public Dictionary<string, string?>? Tags { get; set; }

    [JsonPropertyName("stats")]
    public string? Statistics { get; set; }
}
