using System.Text.Json.Serialization;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>One action in a checkpoint: exactly one member is set. Names and nesting are those of the Delta protocol.</summary>
internal sealed class CheckpointRow
{
    [JsonPropertyName("txn")]
    public CheckpointTransaction? Transaction { get; set; }

    [JsonPropertyName("add")]
    public CheckpointAdd? Add { get; set; }

    [JsonPropertyName("remove")]
    public CheckpointRemove? Remove { get; set; }

    [JsonPropertyName("metaData")]
    public CheckpointMetadata? Metadata { get; set; }

    [JsonPropertyName("protocol")]
    public CheckpointProtocol? Protocol { get; set; }
}
