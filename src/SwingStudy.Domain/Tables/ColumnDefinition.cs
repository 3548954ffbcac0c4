namespace SwingStudy.Domain.Tables;

/// <summary>Name and meaning of one column of a study table.</summary>
/// <param name="Name">Snake-case name, unique in its table ignoring case.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Title">What a person calls it.</param>
/// <param name="Unit">UCUM code of the canonical unit; null for what has none.</param>
public sealed record ColumnDefinition(string Name, ColumnKind Kind, string Title, string? Unit = null);
