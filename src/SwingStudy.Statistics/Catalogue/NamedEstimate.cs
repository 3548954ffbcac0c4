using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Catalogue;

/// <summary>One row of what a statistic gives: a term, a limit, a component.</summary>
/// <param name="Quantity">What the row holds, kebab-case or a label of the table, such as <c>tau-squared</c>.</param>
/// <param name="Estimate">The estimate, or why there is none.</param>
/// <param name="Note">What else must be known to read the row; null when nothing.</param>
public sealed record NamedEstimate(string Quantity, Estimate Estimate, string? Note = null);
