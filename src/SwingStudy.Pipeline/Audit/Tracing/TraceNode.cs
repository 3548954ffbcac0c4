namespace SwingStudy.Pipeline.Audit.Tracing;

/// <summary>One step of a trace: a cell of a table and what it came from.</summary>
/// <param name="Table">Table.</param>
/// <param name="Key">Key of the row: swing, capture, or player/outcome/contrast/measure.</param>
/// <param name="Column">Column; null when the whole row is meant.</param>
/// <param name="Value">The value, as invariant text; null when missing.</param>
/// <param name="Note">How it came about, where that is not plain: "replaced by a later export", "derived".</param>
/// <param name="From">What it was made from.</param>
/// <param name="Origin">The row of the original, for captures.</param>
public sealed record TraceNode(string Table, string Key, string? Column, string? Value, string? Note, IReadOnlyList<TraceNode> From, OriginalRow? Origin);
