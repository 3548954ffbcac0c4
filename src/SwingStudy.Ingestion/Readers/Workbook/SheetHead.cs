namespace SwingStudy.Ingestion.Readers.Workbook;

/// <summary>The beginning of a sheet.</summary>
/// <param name="Index">Position in the workbook, from 0.</param>
/// <param name="Name">Its name.</param>
/// <param name="Records">Its first rows.</param>
/// <param name="Columns">Columns up to the last filled cell of any row.</param>
internal sealed record SheetHead(int Index, string Name, IReadOnlyList<HeadRecord> Records, int Columns);
