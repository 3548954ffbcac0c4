using System.Text.Json;

namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>A record in its document.</summary>
/// <param name="Record">Its value.</param>
/// <param name="Around">Values of the objects around it, as an object in UTF-8; null where it stands in none.</param>
internal readonly record struct JsonPlacedRecord(JsonElement Record, byte[]? Around);
