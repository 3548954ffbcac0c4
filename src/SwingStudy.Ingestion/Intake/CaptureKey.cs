namespace SwingStudy.Ingestion.Intake;

/// <summary>What tells the records of one player and source apart.</summary>
/// <param name="RecordedAt">Time on the device's clock, milliseconds since 1970 UTC.</param>
/// <param name="Sequence">Number of the device; <see cref="long.MinValue"/> where there is none.</param>
/// <param name="Ordinal">0, or counting on where a device without numbers recorded several times within the precision of its clock.</param>
internal readonly record struct CaptureKey(long RecordedAt, long Sequence, int Ordinal);
