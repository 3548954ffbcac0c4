namespace SwingStudy.Storage.Registry;

/// <summary>The first ledger entry that does not hold.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Reason">What is wrong with it.</param>
public sealed record LedgerBreak(long Number, string Reason);
