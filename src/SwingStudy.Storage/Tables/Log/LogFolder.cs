using System.Globalization;
using System.Text.Json;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Files;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>The <c>_delta_log</c> of one table: numbered commits that are never overwritten, and checkpoints.</summary>
internal sealed class LogFolder(string root)
{
    private const string LastCheckpoint = "_last_checkpoint";
    private readonly string _folder = Path.Combine(root, "_delta_log");
    private readonly Lock _oneAtATime = new();
    private Snapshot? _newest;

    /// <summary>Whether any commit exists.</summary>
    internal bool HasVersions => File.Exists(EntryFile(0)) || CheckpointVersions().Any();

    /// <summary>The oldest version that can be read; 0 unless history was taken away.</summary>
    internal long Oldest => File.Exists(EntryFile(0)) ? 0 : CheckpointVersions().DefaultIfEmpty(0).Min();

    /// <summary>The newest version; null when there is none. Reads only what is new since the last call.</summary>
    internal Snapshot? Newest()
    {
        // Stages that are computed side by side ask for the same table: one reads, the others take what it read.
        lock (_oneAtATime)
            return ReadNewest();
    }

    private Snapshot? ReadNewest()
    {
        var snapshot = _newest ?? Start(long.MaxValue);
        // History may have been taken away meanwhile, and with it the commits that follow the one in memory.
        if (ReferenceEquals(snapshot, _newest) && !File.Exists(EntryFile(snapshot.Version)) && !File.Exists(CheckpointFileName(snapshot.Version)))
            snapshot = Start(long.MaxValue);
        while (File.Exists(EntryFile(snapshot.Version + 1)))
            snapshot = snapshot.After(Entry(snapshot.Version + 1));
        _newest = snapshot.Version < 0 ? null : snapshot;
        return _newest;
    }

    /// <summary>The table at <paramref name="version"/>; null when that version does not exist, or its log is gone.</summary>
    internal Snapshot? At(long version)
    {
        if (_newest is { } newest && newest.Version == version)
            return newest;
        if (version < 0)
            return null;
        var snapshot = Start(version);
        while (snapshot.Version < version)
        {
            if (!File.Exists(EntryFile(snapshot.Version + 1)))
                return null;
            snapshot = snapshot.After(Entry(snapshot.Version + 1));
        }

        return snapshot;
    }

    /// <summary>The commits whose log files are there, oldest first.</summary>
    internal IEnumerable<LogEntry> Entries()
    {
        if (!Directory.Exists(_folder))
            return [];
        return Directory.GetFiles(_folder, "*.json")
            .Select(file => long.TryParse(Path.GetFileNameWithoutExtension(file), NumberStyles.None, CultureInfo.InvariantCulture, out var version) ? version : -1)
            .Where(version => version >= 0)
            .Order()
            .Select(Entry);
    }

    /// <summary>Writes a commit unless its version is taken.</summary>
    internal bool TryAppend(LogEntry entry)
    {
        DurableFile.CreateFolder(_folder);
        return DurableFile.TryCreate(EntryFile(entry.Version), LogEntryWriter.Write(entry));
    }

    /// <summary>Writes the whole state of a version beside the log, so that readers need not read all of it.</summary>
    internal void WriteCheckpoint(Snapshot snapshot)
    {
        var (content, actions) = CheckpointFile.Write(snapshot);
        DurableFile.Replace(CheckpointFileName(snapshot.Version), content);
        DurableFile.Replace(Path.Combine(_folder, LastCheckpoint), JsonSerializer.SerializeToUtf8Bytes(new { version = snapshot.Version, size = actions }));
    }

    /// <summary>Deletes the commits and checkpoints of all versions before <paramref name="version"/>, which has a checkpoint, and what killed runs left.</summary>
    internal void ForgetBefore(long version)
    {
        foreach (var file in Directory.GetFiles(_folder))
        {
            var name = Path.GetFileName(file);
            if (DurableFile.IsTemporary(file) || (long.TryParse(name.Split('.')[0], NumberStyles.None, CultureInfo.InvariantCulture, out var of) && of < version))
                File.Delete(file);
        }

        DurableFile.SyncFolder(_folder);
        _newest = null;
    }

    private Snapshot Start(long version)
    {
        var checkpoint = CheckpointVersions().Where(candidate => candidate <= version).DefaultIfEmpty(-1).Max();
        return checkpoint < 0
            ? Snapshot.None(new TableDefinition(Path.GetFileName(root), "", [], null))
            : CheckpointFile.Read(CheckpointFileName(checkpoint), checkpoint);
    }

    private IEnumerable<long> CheckpointVersions() => !Directory.Exists(_folder)
        ? []
        : Directory.GetFiles(_folder, "*.checkpoint.parquet")
            .Select(file => long.Parse(Path.GetFileName(file).Split('.')[0], NumberStyles.None, CultureInfo.InvariantCulture));

    private LogEntry Entry(long version) => LogEntryReader.Read(EntryFile(version), version);

    private string EntryFile(long version) => Path.Combine(_folder, version.ToString("D20", CultureInfo.InvariantCulture) + ".json");

    private string CheckpointFileName(long version) =>
        Path.Combine(_folder, version.ToString("D20", CultureInfo.InvariantCulture) + ".checkpoint.parquet");
}
