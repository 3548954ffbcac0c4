using NodaTime;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Files;
using SwingStudy.Storage.Tables.Columnar;
using SwingStudy.Storage.Tables.Log;

namespace SwingStudy.Storage.Tables;

/// <summary>One versioned table. Versions never change; a commit makes the next one, whole or not at all.</summary>
public sealed class DeltaTable
{
    private const int CommitsPerCheckpoint = 10;
    private const int MostAttempts = 100;
    private static readonly TimeSpan DefaultSafetyAge = TimeSpan.FromDays(7);
    private readonly LogFolder _log;
    private readonly TimeProvider _time;

    internal DeltaTable(TableDefinition definition, string root, LogFolder log, TimeProvider time)
    {
        Definition = definition;
        Root = root;
        _log = log;
        _time = time;
    }

    /// <summary>The columns with which this table is opened; rows read and written have them.</summary>
    public TableDefinition Definition { get; }

    /// <summary>Absolute path of the table's folder.</summary>
    public string Root { get; }

    /// <summary>The newest version; -1 before the first commit.</summary>
    public long CurrentVersion => _log.Newest()?.Version ?? -1;

    /// <summary>The oldest version that can be read: 0, or where history begins after the erasure of a person.</summary>
    public long OldestVersion => _log.Oldest;

    /// <summary>All commits whose log is there, oldest first.</summary>
    public IReadOnlyList<TableVersion> History() =>
        [.. _log.Entries().Select(entry => new TableVersion(entry.Version, Instant.FromUnixTimeMilliseconds(entry.AtMillis), entry.Info, entry.Adds,
            [.. entry.Removes.Select(remove => remove.Key)]))];

    /// <summary>The columns as that version declares them.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such version.</exception>
    public TableDefinition DefinitionAt(long? version = null) => At(version).Definition;

    /// <summary>The files of a version, ordered by path; none before the first commit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such version.</exception>
    public IReadOnlyList<DataFile> Files(long? version = null) => [.. At(version).Files.Values];

    /// <summary>Absolute path of a file of this table.</summary>
    public string FullPath(DataFile file) => Path.Combine(Root, file.Path);

    /// <summary>The rows of a version, row group by row group, in the order of file paths.</summary>
    /// <param name="version">The version; the newest when null.</param>
    /// <param name="columns">Columns to read, in that order; all when null.</param>
    /// <param name="partition">Only files of this partition value.</param>
    /// <param name="ranges">Only rows within all of these ranges; files and row groups that cannot hold any are not read.</param>
    /// <returns>Sets of rows whose table has the columns asked for; columns younger than a file are missing in it. Empty sets are left out.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such version.</exception>
    /// <exception cref="KeyNotFoundException">There is no such column.</exception>
    public IEnumerable<RowSet> Read(
        long? version = null, IReadOnlyList<string>? columns = null, string? partition = null, IReadOnlyList<RowRange>? ranges = null) =>
        ReadFiles(At(version).Files.Values.Where(file => partition is null || file.Partition == partition), columns, ranges);

    /// <summary>The rows of the given files of this table; see <see cref="Read"/>.</summary>
    public IEnumerable<RowSet> ReadFiles(IEnumerable<DataFile> files, IReadOnlyList<string>? columns = null, IReadOnlyList<RowRange>? ranges = null)
    {
        var shape = columns is null ? Definition : Definition with { Columns = [.. columns.Select(name => Definition[name])] };
        var reader = new FileReader(shape, Definition, ranges ?? []);
        return files.Where(reader.MayHoldRows).SelectMany(file => reader.Read(FullPath(file), file));
    }

    /// <summary>Starts a file.</summary>
    /// <param name="partition">Value of the partition column in all its rows; null when they have none or the table has no partitions.</param>
    /// <param name="unit">The unit of work: an original, a session, a player.</param>
    /// <param name="originals">The originals whose rows it will hold, where they are several: see <see cref="DataFile.Originals"/>.</param>
    public DataFileWriter NewFile(string? partition, string unit, string originals = "") => new(Definition, Root, partition, unit, originals, _time);

    /// <summary>Makes the next version. Files that are active already and removals of files that are not are passed over; when nothing is
    /// left to do, no version is made, so that an act cut short can simply be repeated.</summary>
    /// <returns>The version that holds the change; or the problem <c>table-conflict</c> or <c>table-column-kind</c>.</returns>
    /// <exception cref="ArgumentException">An added file does not lie in the table's folder.</exception>
    public Outcome<long> Commit(TableChange change)
    {
        foreach (var file in change.Adds)
        {
            if (new FileInfo(FullPath(file)) is not { Exists: true } found || found.Length != file.Size)
                throw new ArgumentException($"The file {file.Path} of {Definition.Name} is not there with its {file.Size} bytes.", nameof(change));
        }

        for (var attempt = 0; attempt < MostAttempts; attempt++)
        {
            var before = _log.Newest() ?? Snapshot.None(Definition);
            var planned = new CommitPlan(Definition, before, _log).Plan(change, _time.GetUtcNow().ToUnixTimeMilliseconds());
            if (!planned.Succeeded(out var plan))
                return Outcome<long>.Failed(planned.Problems);
            if (plan.Entry is not { } entry)
                return before.Version;
            // The log may name only what is safe.
            if (attempt == 0)
                DurableFile.SyncAll([.. entry.Adds.Select(FullPath)]);
            if (!_log.TryAppend(entry))
                continue;
            if (entry.Version > 0 && entry.Version % CommitsPerCheckpoint == 0)
                _log.WriteCheckpoint(before.After(entry));
            return entry.Version;
        }

        return new Problem("table-conflict", new Place(Root), $"other processes committed {MostAttempts} versions meanwhile", "a quiet moment",
            "Run the command again when the others have finished.");
    }

    /// <summary>Deletes files that no version needs: those of runs that were killed before their commit. Take the study's writer lock first.</summary>
    /// <param name="safetyAge">Younger files stay, since a run may be about to commit them; 7 days when null.</param>
    /// <param name="keepVersions">When given, only the newest and these versions stay readable, and files that others alone need are deleted
    /// too once they have been out of the table for the safety age. When null, every version stays readable.</param>
    /// <returns>Paths of the deleted files.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A version to keep does not exist.</exception>
    public IReadOnlyList<string> Vacuum(TimeSpan? safetyAge = null, IReadOnlyCollection<long>? keepVersions = null) =>
        new Clearing(Root, _log).Clear(_time.GetUtcNow() - (safetyAge ?? DefaultSafetyAge), keepVersions);

    /// <summary>Takes all history away: the newest state becomes a version of its own, and no older log entry, checkpoint or file stays. Only for
    /// the erasure of a person; take the study's writer lock first. Cut short anywhere it leaves a whole table, and can be done again.</summary>
    /// <returns>The version from which history begins; -1 for a table that was never written.</returns>
    public long CollapseHistory(CommitInfo info)
    {
        if (_log.Newest() is not { } before)
            return -1;
        var entry = new LogEntry { Version = before.Version + 1, PartitionColumn = before.Definition.PartitionColumn, AtMillis = _time.GetUtcNow().ToUnixTimeMilliseconds(), Info = info };
        if (!_log.TryAppend(entry))
            throw new IOException($"Another process wrote {Definition.Name} while its history was taken away.");
        var after = before.After(entry) with { Removed = before.Removed.Clear() };
        _log.WriteCheckpoint(after);
        _log.ForgetBefore(entry.Version);
        new Clearing(Root, new LogFolder(Root)).ClearAllBut(after.Files.Keys.ToHashSet(StringComparer.Ordinal));
        return entry.Version;
    }

    private Snapshot At(long? version)
    {
        if (version is not { } asked)
            return _log.Newest() ?? Snapshot.None(Definition);
        return _log.At(asked)
            ?? throw new ArgumentOutOfRangeException(nameof(version), asked, $"Table {Definition.Name} has versions {OldestVersion} to {CurrentVersion}.");
    }
}
