namespace SwingStudy.Pipeline.Running;

/// <summary>What a run did in one stage.</summary>
/// <param name="Stage">Name of the stage.</param>
/// <param name="Done">Units that were computed, by name.</param>
/// <param name="Skipped">Number of units that were up to date.</param>
/// <param name="Removed">Units that no longer exist and whose rows were taken out.</param>
/// <param name="Versions">Version of each output table afterwards.</param>
public sealed record StageReport(
    string Stage, IReadOnlyList<string> Done, int Skipped, IReadOnlyList<string> Removed, IReadOnlyDictionary<string, long> Versions);
