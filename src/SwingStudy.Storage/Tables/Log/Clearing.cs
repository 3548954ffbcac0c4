using SwingStudy.Storage.Files;

namespace SwingStudy.Storage.Tables.Log;

/// <summary>Deletes files of a table's folder that no kept version needs.</summary>
internal sealed class Clearing(string root, LogFolder log)
{
    private const string LogName = "_delta_log";

    /// <summary>Deletes what is needed by none of the kept versions and is older than <paramref name="before"/>.</summary>
    /// <returns>Paths of the deleted files below the table's folder.</returns>
    internal IReadOnlyList<string> Clear(DateTimeOffset before, IReadOnlyCollection<long>? keepVersions)
    {
        if (!Directory.Exists(root))
            return [];
        var kept = Kept(keepVersions, before.ToUnixTimeMilliseconds());
        var deleted = new List<string>();
        foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToList())
        {
            var path = Path.GetRelativePath(root, file).Replace(Path.DirectorySeparatorChar, '/');
            var isData = path.EndsWith(".parquet", StringComparison.Ordinal) && !path.StartsWith(LogName, StringComparison.Ordinal);
            if ((isData && !kept.Contains(path)) || DurableFile.IsTemporary(file))
                Delete(file, path);
        }

        return deleted;

        void Delete(string file, string path)
        {
            if (File.GetLastWriteTimeUtc(file) >= before.UtcDateTime)
                return;
            File.Delete(file);
            deleted.Add(path);
        }
    }

    /// <summary>Deletes all data files but these, whatever their age, and the folders that are empty then.</summary>
    internal void ClearAllBut(IReadOnlySet<string> kept)
    {
        foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories).ToList())
        {
            var path = Path.GetRelativePath(root, file).Replace(Path.DirectorySeparatorChar, '/');
            if (!path.StartsWith(LogName, StringComparison.Ordinal) && !kept.Contains(path))
                File.Delete(file);
        }

        foreach (var folder in Directory.EnumerateDirectories(root).Where(folder => !Directory.EnumerateFileSystemEntries(folder).Any()).ToList())
            Directory.Delete(folder);
        DurableFile.SyncFolder(root);
    }

    private HashSet<string> Kept(IReadOnlyCollection<long>? keepVersions, long beforeMillis)
    {
        var kept = new HashSet<string>(StringComparer.Ordinal);
        var newest = log.Newest();
        if (newest is null)
            return kept;
        kept.UnionWith(newest.Files.Keys);
        if (keepVersions is null)
        {
            kept.UnionWith(newest.Removed.Keys);
            return kept;
        }

        kept.UnionWith(newest.Removed.Where(removed => removed.Value >= beforeMillis).Select(removed => removed.Key));
        foreach (var version in keepVersions)
        {
            kept.UnionWith(log.At(version)?.Files.Keys
                ?? throw new ArgumentOutOfRangeException(nameof(keepVersions), version, $"The table has versions up to {newest.Version}."));
        }

        return kept;
    }
}
