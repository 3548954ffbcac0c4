using Microsoft.Win32.SafeHandles;

namespace SwingStudy.Storage.Files;

/// <summary>Files that are whole or absent, whatever happens in between.</summary>
internal static class DurableFile
{
    private const string TemporaryEnding = ".tmp";

    /// <summary>Writes a file whose name must be new. A crash leaves either the whole file or nothing under that name.</summary>
    /// <returns>False when the name was taken.</returns>
    /// <exception cref="IOException">The file system refuses.</exception>
    internal static bool TryCreate(string path, ReadOnlySpan<byte> content)
    {
        var temporary = WriteTemporary(path, content);
        try
        {
            var isNew = TryName(temporary, path);
            SyncFolder(Path.GetDirectoryName(path)!);
            return isNew;
        }
        finally
        {
            File.Delete(temporary);
        }
    }

    /// <summary>Writes a file in place of an older one of the same name.</summary>
    /// <exception cref="IOException">The file system refuses.</exception>
    internal static void Replace(string path, ReadOnlySpan<byte> content)
    {
        var temporary = WriteTemporary(path, content);
        File.Move(temporary, path, overwrite: true);
        SyncFolder(Path.GetDirectoryName(path)!);
    }

    /// <summary>Gives a finished file its final name, which must be new. The temporary name may stay: the caller deletes it, and flushes the folder.</summary>
    /// <returns>False when the name was taken.</returns>
    internal static bool TryName(string temporary, string path)
    {
        if (OperatingSystem.IsWindows())
            return TryMove(temporary, path);
        var error = SystemCalls.Link(temporary, path);
        if (error == SystemCalls.NameExists)
            return false;
        // File systems without hard links: the move checks for the name first, which the study's writer lock makes safe.
        return error == 0 || TryMove(temporary, path);
    }

    /// <summary>Flushes a file's bytes to the device.</summary>
    internal static void Sync(string path)
    {
        using SafeFileHandle handle = File.OpenHandle(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
        RandomAccess.FlushToDisk(handle);
    }

    /// <summary>Flushes many files and then their folders: at once, since devices are quicker so.</summary>
    internal static void SyncAll(IReadOnlyList<string> paths)
    {
        Parallel.ForEach(paths, Sync);
        foreach (var folder in paths.Select(path => Path.GetDirectoryName(path)!).Distinct(StringComparer.Ordinal))
            SyncFolder(folder);
    }

    /// <summary>Flushes a folder's names to the device.</summary>
    /// <exception cref="IOException">The file system refuses.</exception>
    internal static void SyncFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
            return;
        var error = SystemCalls.SyncFolder(folder);
        if (error != 0)
            throw new IOException($"The folder {folder} cannot be flushed to the device (error {error} of the operating system).");
    }

    /// <summary>Creates a folder and flushes the names of all folders that had to be created for it.</summary>
    internal static void CreateFolder(string folder)
    {
        if (Directory.Exists(folder))
            return;
        var parent = Path.GetDirectoryName(folder)!;
        CreateFolder(parent);
        Directory.CreateDirectory(folder);
        SyncFolder(parent);
    }

    /// <summary>A name that nobody uses, marked as unfinished.</summary>
    internal static string TemporaryName() => $".{Guid.NewGuid():N}{TemporaryEnding}";

    /// <summary>Whether a file is an unfinished one, left by a run that was killed when it is old.</summary>
    internal static bool IsTemporary(string path) =>
        Path.GetFileName(path) is var name && name.StartsWith('.') && name.EndsWith(TemporaryEnding, StringComparison.Ordinal);

    private static string WriteTemporary(string path, ReadOnlySpan<byte> content)
    {
        var temporary = Path.Combine(Path.GetDirectoryName(path)!, TemporaryName());
        using SafeFileHandle handle = File.OpenHandle(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None, preallocationSize: content.Length);
        RandomAccess.Write(handle, content, 0);
        RandomAccess.FlushToDisk(handle);
        return temporary;
    }

    private static bool TryMove(string temporary, string path)
    {
        if (File.Exists(path))
            return false;
        File.Move(temporary, path, overwrite: false);
        return true;
    }
}
