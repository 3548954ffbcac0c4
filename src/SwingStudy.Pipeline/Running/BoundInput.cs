using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>An input table of a stage in one study.</summary>
/// <param name="Table">The table.</param>
/// <param name="Slice">Which rows a unit sees.</param>
/// <param name="Columns">Columns that are read; all when null.</param>
internal sealed record BoundInput(TableDefinition Table, Slice Slice, IReadOnlyList<string>? Columns)
{
    /// <summary>The table with the columns that are read.</summary>
    public TableDefinition Shape { get; } = Columns is null ? Table : Table with { Columns = [.. Columns.Select(name => Table[name])] };
}
