namespace SwingStudy.Ingestion.Readers;

/// <summary>A record that is no data.</summary>
/// <param name="Line">Line or row on which it starts, from 1.</param>
/// <param name="Reason">Why.</param>
public readonly record struct SkippedRecord(int Line, SkipReason Reason);
