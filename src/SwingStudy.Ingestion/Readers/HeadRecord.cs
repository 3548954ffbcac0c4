namespace SwingStudy.Ingestion.Readers;

/// <summary>A record near the beginning of a file, before it is known what it is.</summary>
/// <param name="Line">Line on which it starts.</param>
/// <param name="NextLine">Line behind it.</param>
/// <param name="Raw">Its raw text.</param>
/// <param name="Cells">Its cells.</param>
internal sealed record HeadRecord(int Line, int NextLine, string Raw, IReadOnlyList<string> Cells);
