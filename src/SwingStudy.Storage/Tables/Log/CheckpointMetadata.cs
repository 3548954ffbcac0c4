using System.Text.Json.Serialization;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>Action <c>metaData</c>.</summary>
internal sealed class CheckpointMetadata
{
    [JsonPropertyName("id")]
    public string? Id { get; set; }

    [JsonPropertyName("name")]
    public string? Name { get; set; }

    [JsonPropertyName("description")]
    public string? Description { get; set; }

    [JsonPropertyName("format")]
    public CheckpointFormat? Format { get; set; }

    [JsonPropertyName("schemaString")]
    public string? Schema { get; set; }

    [JsonPropertyName("partitionColumns")]
    public List<string>? PartitionColumns { get; set; }

    [JsonPropertyName("configuration")]
    public Dictionary<string, string?>? Configuration { get; set; }

    [JsonPropertyName("createdTime")]
    public long CreatedMillis { get; set; }
}
