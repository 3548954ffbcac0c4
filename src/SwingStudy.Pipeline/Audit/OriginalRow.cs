namespace SwingStudy.Pipeline.Audit;

/// <summary>One row of an original, as it stands there.</summary>
/// <param name="Original">Hash of the original.</param>
/// <param name="File">Path under which it came.</param>
/// <param name="Row">Line or row, counted from 1.</param>
/// <param name="Raw">The raw text of the row.</param>
/// <param name="Heading">Heading of the cell asked for; null when the whole row is meant.</param>
/// <param name="Cell">Raw text of that cell.</param>
public sealed record OriginalRow(string Original, string File, int Row, string Raw, string? Heading, string? Cell);
