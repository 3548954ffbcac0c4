namespace SwingStudy.Storage.Tables.Log;

/// <summary>What a change comes to on top of one version.</summary>
/// <param name="Entry">The commit to write; null when nothing is left to do.</param>
internal sealed record PlannedCommit(LogEntry? Entry);
