namespace SwingStudy.Statistics.Planning;

/// <summary>What there is of one phase of one player.</summary>
/// <param name="Sessions">Number of sessions.</param>
/// <param name="Swings">Number of swings over all sessions.</param>
public readonly record struct PhaseCounts(int Sessions, int Swings);
