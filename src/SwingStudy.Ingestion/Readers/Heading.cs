namespace SwingStudy.Ingestion.Readers;

/// <summary>The heading of one column.</summary>
/// <param name="Position">Position of the column, from 0.</param>
/// <param name="Name">
/// The heading without invisible characters, runs of blanks as one; the second column of the same heading is <c>heading#2</c>. Unique ignoring case.
/// </param>
/// <param name="Text">The same without <c>#2</c>.</param>
/// <param name="Unit">Unit from the units row, else from brackets at the heading's end, without its brackets; null when neither names one.</param>
public sealed record Heading(int Position, string Name, string Text, string? Unit);
