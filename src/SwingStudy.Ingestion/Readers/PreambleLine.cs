namespace SwingStudy.Ingestion.Readers;

/// <summary>A line above the headings, kept as metadata.</summary>
/// <param name="Line">Line or row, from 1.</param>
/// <param name="Text">Its text as it stands in the file; for a workbook the filled cells joined by blanks.</param>
public sealed record PreambleLine(int Line, string Text);
