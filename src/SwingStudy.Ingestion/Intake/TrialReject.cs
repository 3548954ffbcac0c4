namespace SwingStudy.Ingestion.Intake;

/// <summary>A row or cell that would be rejected.</summary>
/// <param name="Line">Line in the file.</param>
/// <param name="Column">Heading of the cell; null for the whole row.</param>
/// <param name="Raw">Raw text.</param>
/// <param name="Reason">A stable word.</param>
/// <param name="Expected">What would have been right.</param>
public sealed record TrialReject(int Line, string? Column, string Raw, string Reason, string Expected);
