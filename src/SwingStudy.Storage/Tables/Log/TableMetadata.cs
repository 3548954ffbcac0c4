using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>The <c>metaData</c> action.</summary>
/// <param name="Id">Identifier of the table.</param>
/// <param name="Name">Name of the table.</param>
/// <param name="Description">What a row is.</param>
/// <param name="Schema">Its <c>schemaString</c>.</param>
/// <param name="PartitionColumn">The column that names folders.</param>
/// <param name="CreatedMillis">When the table began.</param>
internal sealed record TableMetadata(string Id, string Name, string Description, string Schema, string? PartitionColumn, long CreatedMillis)
{
    /// <summary>The columns as a table definition; names come from <paramref name="fallback"/> where a foreign writer left them out.</summary>
    internal TableDefinition Definition(TableDefinition fallback) => new(
        Name.Length > 0 ? Name : fallback.Name, Description.Length > 0 ? Description : fallback.RowMeaning, SchemaText.Read(Schema), PartitionColumn);
}
