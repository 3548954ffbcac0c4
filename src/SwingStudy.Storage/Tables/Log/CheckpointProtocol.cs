using System.Text.Json.Serialization;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>Action <c>protocol</c>.</summary>
internal sealed class CheckpointProtocol
{
    [JsonPropertyName("minReaderVersion")]
    public int MinReaderVersion { get; set; }

    [JsonPropertyName("minWriterVersion")]
    public int MinWriterVersion { get; set; }
}
