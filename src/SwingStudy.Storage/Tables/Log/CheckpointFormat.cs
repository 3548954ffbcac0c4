using System.Text.Json.Serialization;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>Format of the data files, inside <c>metaData</c>.</summary>
internal sealed class CheckpointFormat
{
    [JsonPropertyName("provider")]
    public string? Provider { get; set; }

    [JsonPropertyName("options")]
    public Dictionary<string, string?>? Options { get; set; }
}
