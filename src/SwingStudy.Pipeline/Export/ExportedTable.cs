using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Export;

/// <summary>One table as it was exported.</summary>
/// <param name="Table">Its columns.</param>
/// <param name="Version">The version that was exported; null for what is not versioned.</param>
/// <param name="RowCount">Rows written.</param>
/// <param name="Files">Files written, relative to the export folder.</param>
public sealed record ExportedTable(TableDefinition Table, long? Version, long RowCount, IReadOnlyList<ExportedFile> Files);
