namespace SwingStudy.Ingestion.Readers.Json;

/// <summary>One value of a record and where its text lies.</summary>
internal readonly record struct JsonCell(int Column, CellKind Kind, int Start, int Length, double Number);
