namespace SwingStudy.Domain.Protocols;

/// <summary>What chance decides, drawn before data.</summary>
/// <param name="Kind"><c>phase-start</c>, <c>order</c>, <c>alternation</c>.</param>
/// <param name="EarliestSession">First session at which the intervention may start (phase-start).</param>
/// <param name="LatestSession">Last session at which it may start (phase-start).</param>
/// <param name="Seed">Seed of the draw.</param>
public sealed record Randomization(string Kind, int? EarliestSession, int? LatestSession, ulong Seed);
