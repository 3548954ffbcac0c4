namespace SwingStudy.Ingestion.Mapping.Times;

/// <summary>What became of the local times of a file.</summary>
/// <param name="Skipped">Positions of times that never were, because clocks went forward over them.</param>
/// <param name="Ambiguous">Runs of times that occur twice, with the decision.</param>
internal sealed record ResolvedTimes(IReadOnlyList<int> Skipped, IReadOnlyList<AmbiguousRun> Ambiguous)
{
    /// <summary>Whether a run is left that nothing in the file decides.</summary>
    public bool IsOpen => Ambiguous.Any(run => run.Decision == AmbiguousDecision.Open);
}

/// <summary>Neighbouring rows whose local time occurs twice.</summary>
/// <param name="First">Position of the first.</param>
/// <param name="Last">Position of the last.</param>
/// <param name="Decision">What was decided, and by what.</param>
/// <param name="FirstLater">Position of the first row after the clocks went back, with <see cref="AmbiguousDecision.ByOrder"/>.</param>
internal sealed record AmbiguousRun(int First, int Last, AmbiguousDecision Decision, int? FirstLater = null);

/// <summary>How an ambiguous run of times was decided.</summary>
internal enum AmbiguousDecision
{
    /// <summary>Nothing decides: the file is held.</summary>
    Open,

    /// <summary>The clock steps back once within the run while the rows go on.</summary>
    ByOrder,

    /// <summary>A person decided.</summary>
    ByPerson,
}
