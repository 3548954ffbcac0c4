using System.Collections.Concurrent;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables.Log;

namespace SwingStudy.Storage.Tables;

/// <summary>The versioned tables of a study: each a Delta Lake table (reader 1, writer 2) of Parquet files.</summary>
/// <param name="folder">The study.</param>
/// <param name="time">The clock for commit times; the system's when not given.</param>
public sealed class TableStore(StudyFolder folder, TimeProvider? time = null)
{
    private readonly TimeProvider _time = time ?? TimeProvider.System;

    // The log of a table with many files is long: each log remembers what it read, for all tables that this store hands out.
    private readonly ConcurrentDictionary<string, LogFolder> _logs = new(StringComparer.Ordinal);

    /// <summary>The table, existing or not; its columns grow to <paramref name="definition"/> with the next commit.</summary>
    public DeltaTable Table(TableDefinition definition) => new(definition, RootOf(definition.Name), LogOf(definition.Name), _time);

    /// <summary>An existing table with the columns that its newest version declares; null when it was never written.</summary>
    public DeltaTable? Existing(string name) =>
        LogOf(name).Newest() is { } newest ? new DeltaTable(newest.Definition, RootOf(name), LogOf(name), _time) : null;

    /// <summary>Names of the tables that have at least one version, in order.</summary>
    public IReadOnlyList<string> Names() =>
        !Directory.Exists(folder.Tables)
            ? []
            : [.. Directory.GetDirectories(folder.Tables).Where(root => new LogFolder(root).HasVersions).Select(root => Path.GetFileName(root)!)
                .Order(StringComparer.Ordinal)];

    /// <summary>Begins to read the logs of tables on another thread, for a command that will ask for all of them after other work. What cannot be read is told
    /// by the one who asks.</summary>
    public void ReadAhead(IEnumerable<string> names) => Task.Run(() =>
    {
        foreach (var name in names)
            LogOf(name).Newest();
    });

    private string RootOf(string name) => Path.Combine(folder.Tables, name);

    private LogFolder LogOf(string name) => _logs.GetOrAdd(name, static (_, root) => new LogFolder(root), RootOf(name));
}
