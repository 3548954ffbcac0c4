namespace SwingStudy.Ingestion.Intake;

/// <summary>A value that a later file changed.</summary>
/// <param name="Row">Line in the new file.</param>
/// <param name="Replaces">Capture or session that is replaced.</param>
/// <param name="Variable">The variable.</param>
/// <param name="Before">Value before, in the canonical unit; null: none.</param>
/// <param name="After">Value after; null: none.</param>
public sealed record RowRevision(int Row, string Replaces, string Variable, string? Before, string? After);
