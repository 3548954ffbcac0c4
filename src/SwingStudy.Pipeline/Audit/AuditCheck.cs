using SwingStudy.Domain.Problems;

namespace SwingStudy.Pipeline.Audit;

/// <summary>One thing that was verified.</summary>
/// <param name="Name">Kebab-case name: <c>originals</c>, <c>tables</c>, <c>ledger</c>, <c>accounting</c>.</param>
/// <param name="Examined">How many things were looked at.</param>
/// <param name="What">What they are: "originals, hash recomputed".</param>
/// <param name="Problems">What does not hold; empty when all does.</param>
public sealed record AuditCheck(string Name, long Examined, string What, IReadOnlyList<Problem> Problems)
{
    /// <summary>What holds and yet should be known, such as what an erasure made impossible to reproduce.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];

    /// <summary>Whether everything holds.</summary>
    public bool Passed => Problems.Count == 0;
}
