using System.Text.Json.Serialization;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>Action <c>txn</c>.</summary>
internal sealed class CheckpointTransaction
{
    [JsonPropertyName("appId")]
    public string? Application { get; set; }

    [JsonPropertyName("version")]
    public long Number { get; set; }
}
