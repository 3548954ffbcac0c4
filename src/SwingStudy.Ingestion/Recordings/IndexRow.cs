namespace SwingStudy.Ingestion.Recordings;

/// <summary>What the table beside the files says of one file.</summary>
/// <param name="Find">Cell under a heading, trimmed; null when there is no such heading.</param>
internal sealed record IndexRow(Func<string, string?> Find);
