using System.Security.Cryptography;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Files;

namespace SwingStudy.Storage.Originals;

/// <summary>The untouched bytes of every file that was taken in, by their hash, read-only: <c>originals/ab/abcd….bin</c>. The path holds
/// no file name, since names of exports often hold names of people.</summary>
public sealed class OriginalStore
{
    private const int BufferBytes = 1 << 20;
    private const UnixFileMode ReadOnlyMode = UnixFileMode.UserRead | UnixFileMode.GroupRead;
    private readonly string _root;

    /// <summary>Uses the study's folder of originals.</summary>
    public OriginalStore(StudyFolder folder) => _root = folder.Originals;

    /// <summary>The hash of a file as it would be stored; nothing is stored.</summary>
    /// <returns>The hash; or the problem <c>file-missing</c>, <c>file-changing</c> or <c>file-not-readable</c>.</returns>
    public static Outcome<Sha256> HashOf(string path)
    {
        var read = Read(path, null);
        return read.Succeeded(out var hash) ? hash : Outcome<Sha256>.Failed(read.Problems);
    }

    /// <summary>Stores a file's bytes: whole and flushed, or not at all. Whatever goes wrong, the file stays where it is.</summary>
    /// <param name="path">The file.</param>
    /// <param name="keepFile">True copies and leaves the file; false moves it, by one rename where both lie in one file system.</param>
    /// <returns>Hash, size and whether the bytes were there; or the problem <c>file-missing</c>, <c>file-changing</c>, <c>file-not-readable</c>
    /// or <c>original-not-stored</c>.</returns>
    public Outcome<StoredOriginal> Take(string path, bool keepFile)
    {
        try
        {
            DurableFile.CreateFolder(_root);
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException or CopyFailedException)
        {
            return OriginalMessages.NotStored(path, _root, refused.Message);
        }

        return keepFile ? Copy(path) : Move(path, leaveFirstName: false);
    }

    /// <summary>
    /// Stores a file of the inbox without giving up its name there: no copy is made where both lie in one file system. The caller removes the file once
    /// all that came of it is recorded, so that whatever happens before, it is found in the inbox again.
    /// </summary>
    /// <returns>As <see cref="Take"/>.</returns>
    public Outcome<StoredOriginal> Adopt(string path)
    {
        try
        {
            DurableFile.CreateFolder(_root);
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException or CopyFailedException)
        {
            return OriginalMessages.NotStored(path, _root, refused.Message);
        }

        return Move(path, leaveFirstName: true);
    }

    /// <summary>Whether the bytes of that hash are stored.</summary>
    public bool Contains(Sha256 hash) => File.Exists(PathOf(hash));

    /// <summary>Absolute path of the stored bytes; read it, never write it.</summary>
    public string PathOf(Sha256 hash)
    {
        var hex = hash.ToString();
        return Path.Combine(_root, hex[..2], hex + ".bin");
    }

    /// <summary>Opens stored bytes.</summary>
    /// <returns>A stream to dispose; or the problem <c>original-missing</c>.</returns>
    public Outcome<FileStream> Open(Sha256 hash) => Contains(hash)
        ? new FileStream(PathOf(hash), FileMode.Open, FileAccess.Read, FileShare.Read, BufferBytes, FileOptions.SequentialScan)
        : OriginalMessages.Gone(hash);

    /// <summary>Recomputes the hash of stored bytes.</summary>
    /// <returns>The hash; or the problem <c>original-missing</c> or <c>original-damaged</c>.</returns>
    public Outcome<Sha256> Verify(Sha256 hash)
    {
        if (!Contains(hash))
            return OriginalMessages.Gone(hash);
        using var stream = File.OpenRead(PathOf(hash));
        var found = new Sha256(Convert.ToHexStringLower(SHA256.HashData(stream)));
        return found == hash ? hash : OriginalMessages.Damaged(hash, found);
    }

    /// <summary>Stores bytes that the program made itself: an original without the rows of a person who is erased.</summary>
    /// <exception cref="IOException">The file system refuses.</exception>
    public Sha256 Put(ReadOnlySpan<byte> content)
    {
        var hash = Sha256.Of(content);
        var target = PathOf(hash);
        DurableFile.CreateFolder(Path.GetDirectoryName(target)!);
        if (DurableFile.TryCreate(target, content) && !OperatingSystem.IsWindows())
            File.SetUnixFileMode(target, ReadOnlyMode);
        return hash;
    }

    /// <summary>Destroys stored bytes: only for a person who is erased, or for bytes that no file of the study stands for. Nothing there is no fault.</summary>
    public void Remove(Sha256 hash)
    {
        var path = PathOf(hash);
        if (!File.Exists(path))
            return;
        File.Delete(path);
        DurableFile.SyncFolder(Path.GetDirectoryName(path)!);
        if (!Directory.EnumerateFileSystemEntries(Path.GetDirectoryName(path)!).Any())
            Directory.Delete(Path.GetDirectoryName(path)!);
    }

    /// <summary>Hashes of all stored originals, in order.</summary>
    public IEnumerable<Sha256> All() => !Directory.Exists(_root)
        ? []
        : Directory.EnumerateFiles(_root, "*.bin", SearchOption.AllDirectories).Select(file => Path.GetFileNameWithoutExtension(file))
            .Order(StringComparer.Ordinal).Select(hex => new Sha256(hex));

    /// <summary>Deletes copies that a killed run left unfinished. Take the study's writer lock first.</summary>
    /// <param name="before">Younger ones stay.</param>
    public void ClearUnfinished(DateTimeOffset before)
    {
        if (!Directory.Exists(_root))
            return;
        foreach (var file in Directory.GetFiles(_root).Where(DurableFile.IsTemporary).Where(file => File.GetLastWriteTimeUtc(file) < before.UtcDateTime))
            File.Delete(file);
    }

    private Outcome<StoredOriginal> Copy(string path)
    {
        var temporary = Path.Combine(_root, DurableFile.TemporaryName());
        try
        {
            Outcome<Sha256> read;
            using (var copy = new FileStream(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1))
            {
                read = Read(path, copy);
                copy.Flush(flushToDisk: true);
            }

            return read.Succeeded(out var hash) ? Name(temporary, hash) : Outcome<StoredOriginal>.Failed(read.Problems);
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException or CopyFailedException)
        {
            return OriginalMessages.NotStored(path, _root, refused.Message);
        }
        finally
        {
            File.Delete(temporary);
        }
    }

    private Outcome<StoredOriginal> Move(string path, bool leaveFirstName)
    {
        var before = new FileInfo(path);
        var read = Read(path, null);
        if (!read.Succeeded(out var hash))
            return Outcome<StoredOriginal>.Failed(read.Problems);
        var temporary = Path.Combine(_root, DurableFile.TemporaryName());
        try
        {
            // One more name for the same bytes: the inbox keeps its own until the new one is safe. Across file systems there is no such thing.
            if (OperatingSystem.IsWindows() || SystemCalls.Link(path, temporary) != 0)
                return leaveFirstName ? Copy(path) : MoveByCopy(path);
            DurableFile.Sync(temporary);
            if (!SameAs(before, path))
                return OriginalMessages.Changing(path);
            var stored = Name(temporary, hash);
            if (!leaveFirstName)
                File.Delete(path);
            return stored;
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException or CopyFailedException)
        {
            return OriginalMessages.NotStored(path, _root, refused.Message);
        }
        finally
        {
            File.Delete(temporary);
        }
    }

    private Outcome<StoredOriginal> MoveByCopy(string path)
    {
        var copied = Copy(path);
        if (copied.Problems.Count == 0)
            File.Delete(path);
        return copied;
    }

    private StoredOriginal Name(string temporary, Sha256 hash)
    {
        var target = PathOf(hash);
        DurableFile.CreateFolder(Path.GetDirectoryName(target)!);
        var size = new FileInfo(temporary).Length;
        var isNew = DurableFile.TryName(temporary, target);
        if (isNew && !OperatingSystem.IsWindows())
            File.SetUnixFileMode(target, ReadOnlyMode);
        DurableFile.SyncFolder(Path.GetDirectoryName(target)!);
        return new StoredOriginal(hash, size, !isNew);
    }

    /// <summary>Reads a file to its end and makes sure that it was the same file all the while. Failing to write the copy throws.</summary>
    private static Outcome<Sha256> Read(string path, Stream? copy)
    {
        var before = new FileInfo(path);
        if (!before.Exists)
            return OriginalMessages.Missing(path);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var size = 0L;
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1, FileOptions.SequentialScan);
            var buffer = new byte[BufferBytes];
            for (int count; (count = stream.Read(buffer)) > 0; size += count)
            {
                hash.AppendData(buffer, 0, count);
                Write(copy, buffer.AsSpan(0, count));
            }
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            return OriginalMessages.NotReadable(path, refused.Message);
        }

        return size == before.Length && SameAs(before, path)
            ? new Sha256(Convert.ToHexStringLower(hash.GetHashAndReset()))
            : OriginalMessages.Changing(path);
    }

    private static void Write(Stream? copy, ReadOnlySpan<byte> bytes)
    {
        try
        {
            copy?.Write(bytes);
        }
        catch (IOException refused)
        {
            throw new CopyFailedException(refused.Message, refused);
        }
    }

    private static bool SameAs(FileInfo before, string path) =>
        new FileInfo(path) is { Exists: true } now && now.Length == before.Length && now.LastWriteTimeUtc == before.LastWriteTimeUtc;
}
