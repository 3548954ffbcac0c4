namespace SwingStudy.Pipeline.Running;

/// <summary>A stage whose units are computed and whose files are written, but count for nothing before they are committed.</summary>
/// <param name="Stage">The stage.</param>
/// <param name="Files">The files of its inputs with which it began.</param>
/// <param name="Results">Units that were not up to date, in order of their names.</param>
/// <param name="Skipped">Number of units that were.</param>
/// <param name="Gone">Units that no longer exist and whose rows are to be taken out.</param>
internal sealed record ComputedStage(BoundStage Stage, InputFiles Files, IReadOnlyList<FinishedUnit> Results, int Skipped, IReadOnlyList<string> Gone);
