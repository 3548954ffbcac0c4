namespace SwingStudy.Domain.Tables;

/// <summary>Name, meaning and columns of one study table.</summary>
/// <param name="Name">Snake-case name, also its folder under <c>tables/</c>.</param>
/// <param name="RowMeaning">What one row is: "one swing".</param>
/// <param name="Columns">Columns in the order in which they are written.</param>
/// <param name="PartitionColumn">A text column whose values name folders; null for tables of the whole study.</param>
public sealed record TableDefinition(string Name, string RowMeaning, IReadOnlyList<ColumnDefinition> Columns, string? PartitionColumn)
{
    /// <summary>The column of that name.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public ColumnDefinition this[string column] =>
        Columns.FirstOrDefault(candidate => candidate.Name == column)
        ?? throw new KeyNotFoundException($"Table {Name} has no column '{column}'.");
}
