namespace SwingStudy.Domain.Sources;

/// <summary>A kind of row, recognised when all conditions hold.</summary>
/// <param name="Label">What such rows are: "average", "reminder", "practice".</param>
/// <param name="Conditions">At least one.</param>
public sealed record RowRule(string Label, IReadOnlyList<CellCondition> Conditions);
