namespace SwingStudy.Domain.Protocols;

/// <summary>The smallest change that matters: a value judgement, not noise.</summary>
/// <param name="Amount">Size in the variable's canonical unit, positive.</param>
/// <param name="Basis">Who or what says so: <c>stated</c>, <c>share-of-between-player-sd</c>, <c>share-of-own-sd</c>.</param>
/// <param name="Reason">Why.</param>
public sealed record WorthwhileChange(double Amount, string Basis, string Reason);
