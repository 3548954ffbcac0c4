namespace SwingStudy.Ingestion.Mapping.Columns;

/// <summary>Where the texts of a field stand: in a column, or once for the whole file.</summary>
/// <param name="Position">Position of the column; -1 when one text holds for all rows.</param>
/// <param name="Name">Heading, or what the text comes from, for messages.</param>
/// <param name="Fixed">The text that holds for all rows.</param>
internal readonly record struct ColumnPlace(int Position, string Name, string? Fixed)
{
    /// <summary>Whether one text holds for all rows.</summary>
    public bool IsFixed => Position < 0;
}
