namespace SwingStudy.Pipeline.Audit.Tracing;

/// <summary>One row of an original, as it stands there.</summary>
/// <param name="Original">Hash of the original.</param>
/// <param name="File">Path under which it came.</param>
/// <param name="Row">Line or row, counted from 1; the first one of a recording; 0 for a whole file.</param>
/// <param name="Raw">The raw text of the row; empty where there is none to show.</param>
/// <param name="Heading">Heading of the cell asked for; null when the whole row is meant.</param>
/// <param name="Cell">Raw text of that cell.</param>
/// <param name="Absent">Why there is no raw text; null when there is.</param>
public sealed record OriginalRow(string Original, string File, int Row, string Raw, string? Heading, string? Cell, string? Absent);
