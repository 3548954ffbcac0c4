namespace SwingStudy.Ingestion.Recordings;

/// <summary>An event that a device marked.</summary>
/// <param name="Event">Name that the mapping gives it.</param>
/// <param name="Label">Its name in the file.</param>
/// <param name="TimeSeconds">From the first sample.</param>
internal sealed record RecordedEvent(string Event, string Label, double TimeSeconds);
