using NodaTime;

namespace SwingStudy.Storage.Tables;

/// <summary>One commit of a table.</summary>
/// <param name="Version">Counted from 0.</param>
/// <param name="At">When it was committed.</param>
/// <param name="Info">Why; null for a commit by a foreign program.</param>
/// <param name="Added">Files added.</param>
/// <param name="Removed">Paths taken out.</param>
public sealed record TableVersion(long Version, Instant At, CommitInfo? Info, IReadOnlyList<DataFile> Added, IReadOnlyList<string> Removed);
