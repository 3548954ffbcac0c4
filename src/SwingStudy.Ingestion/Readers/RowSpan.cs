namespace SwingStudy.Ingestion.Readers;

/// <summary>Where a row lies in its block.</summary>
/// <param name="Start">First character of its raw text.</param>
/// <param name="Length">Characters of its raw text, without the line break that ends it.</param>
/// <param name="FirstCell">Position of its first cell.</param>
/// <param name="Line">Line of the file on which it starts, from 1.</param>
internal readonly record struct RowSpan(int Start, int Length, int FirstCell, int Line);
