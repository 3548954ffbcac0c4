namespace SwingStudy.Ingestion.Readers.Workbook;

/// <summary>A workbook whose sheets can all be read to their end.</summary>
internal sealed record ParsedWorkbook(Sheets Sheets, WorkbookParts Parts, IReadOnlyList<SheetHead> Heads);
