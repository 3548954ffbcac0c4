using System.Collections.Immutable;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>A table at one version: the sum of its log.</summary>
/// <param name="Version">Version.</param>
/// <param name="TableId">Identifier that the table keeps for life.</param>
/// <param name="CreatedMillis">When the table began.</param>
/// <param name="Definition">Columns at that version.</param>
/// <param name="Files">Active files by path.</param>
/// <param name="Removed">Removed files by path, with the time of removal.</param>
/// <param name="Applications">Highest number of each application's acts.</param>
internal sealed record Snapshot(
    long Version,
    string TableId,
    long CreatedMillis,
    TableDefinition Definition,
    ImmutableSortedDictionary<string, DataFile> Files,
    ImmutableSortedDictionary<string, long> Removed,
    ImmutableSortedDictionary<string, long> Applications)
{
    /// <summary>No version yet.</summary>
    internal static Snapshot None(TableDefinition definition) => new(-1, "", 0, definition,
        ImmutableSortedDictionary.Create<string, DataFile>(StringComparer.Ordinal),
        ImmutableSortedDictionary.Create<string, long>(StringComparer.Ordinal),
        ImmutableSortedDictionary.Create<string, long>(StringComparer.Ordinal));

    /// <summary>The table after one more commit.</summary>
    internal Snapshot After(LogEntry entry)
    {
        var files = Files.ToBuilder();
        var removed = Removed.ToBuilder();
        foreach (var (path, at) in entry.Removes)
        {
            files.Remove(path);
            removed[path] = at;
        }

        foreach (var file in entry.Adds)
        {
            files[file.Path] = file;
            removed.Remove(file.Path);
        }

        return this with
        {
            Version = entry.Version,
            TableId = entry.Table?.Id ?? TableId,
            CreatedMillis = entry.Table?.CreatedMillis ?? CreatedMillis,
            Definition = entry.Table?.Definition(Definition) ?? Definition,
            Files = files.ToImmutable(),
            Removed = removed.ToImmutable(),
            Applications = Applications.SetItems(entry.Applications),
        };
    }
}
