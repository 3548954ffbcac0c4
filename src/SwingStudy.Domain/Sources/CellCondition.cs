namespace SwingStudy.Domain.Sources;

/// <summary>A condition on one cell of a row.</summary>
/// <param name="Column">Heading (see <see cref="FieldSource.Column"/>); null: the first cell of the row that is not empty.</param>
/// <param name="Is">Texts of which the trimmed cell must be one, ignoring case; null: any.</param>
/// <param name="Matches">Regular expression that the cell must match; null: any.</param>
/// <param name="Missing">Whether the cell must be missing (true) or present (false); null: either.</param>
public sealed record CellCondition(string? Column, IReadOnlyList<string>? Is, string? Matches, bool? Missing);
