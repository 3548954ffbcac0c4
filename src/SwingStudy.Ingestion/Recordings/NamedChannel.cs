using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>A channel or landmark coordinate that a mapping names.</summary>
/// <param name="Channel">Its name, in the device's axes.</param>
/// <param name="Unit">The canonical unit.</param>
/// <param name="Field">Where its samples stand.</param>
internal sealed record NamedChannel(string Channel, string Unit, FieldSource Field);
