namespace SwingStudy.Ingestion.Readers;

/// <summary>The sign before the decimals.</summary>
internal sealed record DecimalSign(char Sign);
