using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Query;

/// <summary>One table version as SQL sees it.</summary>
/// <param name="Name">Name of the view: <c>swings</c> for the newest version, <c>swings@3</c> for version 3.</param>
/// <param name="Table">Columns of the table.</param>
/// <param name="Files">Absolute paths of the Parquet files of that version; may be empty.</param>
public sealed record QueryView(string Name, TableDefinition Table, IReadOnlyList<string> Files)
{
    /// <summary>SQL expressions, by column, that are shown in place of the column; none: the table as it is.</summary>
    public IReadOnlyDictionary<string, string> Replaced { get; init; } = new Dictionary<string, string>();
}
