namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>Why a record cannot be taken.</summary>
internal sealed record JsonFault(string Code, string Found, string Expected);
