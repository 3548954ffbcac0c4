namespace SwingStudy.Pipeline.Running;

/// <summary>What a run has to do in one stage.</summary>
/// <param name="All">Names of all units that exist.</param>
/// <param name="Todo">Units that are not up to date.</param>
/// <param name="Skipped">Number of units that are.</param>
internal sealed record StagePlan(IReadOnlyList<string> All, IReadOnlyList<PlannedUnit> Todo, int Skipped);
