using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Tables;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>Turns a change into the commit that follows <paramref name="before"/>, or finds what stands against it.</summary>
internal sealed class CommitPlan(TableDefinition definition, Snapshot before, LogFolder log)
{
    /// <summary>The commit; without an entry when the table holds the change already.</summary>
    internal Outcome<PlannedCommit> Plan(TableChange change, long atMillis)
    {
        if (change.Once is { } once && before.Applications.TryGetValue(once.Application, out var done) && done >= once.Number)
            return new PlannedCommit(null);
        if (KindConflict() is { } kind)
            return kind;
        var adds = change.Adds.DistinctBy(file => file.Path).Where(file => !before.Files.ContainsKey(file.Path)).ToList();
        var removes = Removes(change);
        var columns = MergedColumns();
        var isNew = before.Version < 0;
        var grows = isNew || !columns.SequenceEqual(before.Definition.Columns);
        if (!grows && adds.Count == 0 && removes.Count == 0 && change.Once is null)
            return new PlannedCommit(null);
        if (Overtaken(change) is { } overtaken)
            return overtaken;
        return new PlannedCommit(new LogEntry
        {
            Version = before.Version + 1,
            DeclaresProtocol = isNew,
            Table = grows ? Metadata(columns, isNew, atMillis) : null,
            PartitionColumn = definition.PartitionColumn,
            Adds = adds,
            Removes = [.. removes.Select(path => KeyValuePair.Create(path, atMillis))],
            Applications = change.Once is { } act ? [new(act.Application, act.Number)] : [],
            AtMillis = atMillis,
            Info = change.Info,
        });
    }

    private List<string> Removes(TableChange change)
    {
        var stays = change.Adds.Select(file => file.Path).ToHashSet(StringComparer.Ordinal);
        var units = change.ReplacedUnits.ToHashSet(StringComparer.Ordinal);
        var named = change.Removes.Where(before.Files.ContainsKey).ToHashSet(StringComparer.Ordinal);
        return [.. before.Files.Values.Where(file => !stays.Contains(file.Path) && (named.Contains(file.Path) || units.Contains(file.Unit)))
            .Select(file => file.Path)];
    }

    /// <summary>Declared columns first, in their order; columns that only older versions have stay at the end.</summary>
    private IReadOnlyList<ColumnDefinition> MergedColumns()
    {
        var declared = definition.Columns.Select(column => column.Name).ToHashSet(StringComparer.Ordinal);
        return [.. definition.Columns, .. before.Definition.Columns.Where(column => before.Version >= 0 && !declared.Contains(column.Name))];
    }

    private TableMetadata Metadata(IReadOnlyList<ColumnDefinition> columns, bool isNew, long atMillis) => new(
        isNew ? Guid.NewGuid().ToString() : before.TableId, definition.Name, definition.RowMeaning,
        SchemaText.Write(definition with { Columns = columns }), definition.PartitionColumn, isNew ? atMillis : before.CreatedMillis);

    private Problem? KindConflict()
    {
        if (before.Version < 0)
            return null;
        foreach (var column in definition.Columns)
        {
            var stored = before.Definition.Columns.FirstOrDefault(candidate => candidate.Name == column.Name);
            if (stored is not null && stored.Kind != column.Kind)
            {
                return new Problem("table-column-kind", new Place($"tables/{definition.Name}", Column: column.Name), $"the kind {column.Kind}",
                    $"{stored.Kind}, as the table's earlier versions hold it",
                    "Give the changed variable a new name in the dictionary: the old values stay readable under the old one.");
            }
        }

        return null;
    }

    private Problem? Overtaken(TableChange change)
    {
        if (change.BasedOn is not { } basis || basis >= before.Version)
            return null;
        var mine = change.Adds.Select(file => file.Unit).Concat(change.ReplacedUnits).ToHashSet(StringComparer.Ordinal);
        var removed = change.Removes.ToHashSet(StringComparer.Ordinal);
        foreach (var entry in log.Entries().Where(entry => entry.Version > basis))
        {
            if (entry.Adds.FirstOrDefault(file => mine.Contains(file.Unit)) is { } other)
                return Conflict(entry.Version, $"files of '{other.Unit}'");
            if (entry.Removes.FirstOrDefault(remove => removed.Contains(remove.Key)).Key is { } path)
                return Conflict(entry.Version, $"a removal of {path}");
        }

        return null;

        Problem Conflict(long version, string what) => new("table-conflict", new Place($"tables/{definition.Name}"),
            $"version {version} brought {what}, this change was computed from version {basis}", "no other writer of the same unit",
            "Run the command again: it starts from the newest version.");
    }
}
