using System.Buffers;
using System.Collections.Concurrent;
using System.Security.Cryptography;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Files;

namespace SwingStudy.Storage.Originals;

/// <summary>The untouched bytes of every file that was taken in, by their hash, read-only: <c>originals/ab/abcd….bin</c>. The path holds
/// no file name, since names of exports often hold names of people. Where the study has a vault they are encrypted, <c>originals/ab/abcd….sealed</c>, under the
/// same name: the hash of what is in them.</summary>
/// <param name="folder">The study folder.</param>
/// <param name="keys">Tells the keys of encrypted originals, null where the study has no vault; without it nothing is encrypted.</param>
public sealed class OriginalStore(StudyFolder folder, Func<OriginalKeys?>? keys = null) : IDisposable
{
    private const string ClearEnding = ".bin";
    private const string SealedEnding = ".sealed";
    private const string WorkPrefix = ".clear-";
    private const int BufferBytes = 1 << 20;
    private const int LeastBufferBytes = 1 << 12;
    private const UnixFileMode ReadOnlyMode = UnixFileMode.UserRead | UnixFileMode.GroupRead;
    private readonly string _root = folder.Originals;
    private readonly ConcurrentDictionary<Sha256, string> _clear = [];

    // Files may be stored side by side: no folder goes while another file is being named in it.
    private readonly Lock _naming = new();
    private string? _work;

    private OriginalKeys? Keys => keys?.Invoke();

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

        return keepFile ? Copy(path) : Keys is null ? Move(path, leaveFirstName: false) : MoveByCopy(path);
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

        return Keys is null ? Move(path, leaveFirstName: true) : Copy(path);
    }

    /// <summary>Whether the bytes of that hash are stored.</summary>
    public bool Contains(Sha256 hash) => File.Exists(PathOf(hash));

    /// <summary>Absolute path of the stored file, encrypted or not; read what is in it through <see cref="Reach"/>.</summary>
    public string PathOf(Sha256 hash) => SealedPath(hash) is var path && File.Exists(path) ? path : ClearPath(hash);

    /// <summary>
    /// A file that holds the stored bytes as they came, to be read and not written: the stored one, or a decrypted copy that goes when the store is disposed of.
    /// What this store put away itself can be reached while the vault is locked.
    /// </summary>
    /// <returns>Its path; or the problem <c>original-missing</c>, <c>original-locked</c> or <c>original-damaged</c>.</returns>
    public Outcome<string> Reach(Sha256 hash)
    {
        if (_clear.TryGetValue(hash, out var known))
            return known;
        if (!Contains(hash))
            return OriginalMessages.Gone(hash);
        if (!IsSealed(hash))
            return ClearPath(hash);
        var path = NewClearFile();
        using (var clear = new FileStream(path, FileMode.CreateNew, FileAccess.Write))
        {
            if (Open(hash, clear) is { } problem)
                return problem;
        }

        return _clear[hash] = path;
    }

    /// <summary>The stored bytes as they came.</summary>
    /// <returns>The bytes; or a problem as of <see cref="Reach"/>.</returns>
    public Outcome<byte[]> ReadAll(Sha256 hash)
    {
        if (!Contains(hash))
            return OriginalMessages.Gone(hash);
        if (!IsSealed(hash))
            return File.ReadAllBytes(ClearPath(hash));
        using var clear = new MemoryStream();
        return Open(hash, clear) is { } problem ? problem : clear.ToArray();
    }

    /// <summary>Recomputes the hash of stored bytes.</summary>
    /// <returns>The hash; or the problem <c>original-missing</c>, <c>original-locked</c> or <c>original-damaged</c>.</returns>
    public Outcome<Sha256> Verify(Sha256 hash)
    {
        if (!Contains(hash))
            return OriginalMessages.Gone(hash);
        if (IsSealed(hash))
            return Open(hash, Stream.Null) is { } problem ? problem : hash;
        using var stream = File.OpenRead(ClearPath(hash));
        var found = new Sha256(Convert.ToHexStringLower(SHA256.HashData(stream)));
        return found == hash ? hash : OriginalMessages.Damaged(hash, found);
    }

    /// <summary>Encrypts what still lies there in clear, where the study has a vault. Cut short, it is done again by the next.</summary>
    /// <returns>How many were encrypted.</returns>
    /// <exception cref="IOException">The file system refuses.</exception>
    public int SealAll()
    {
        if (Keys is null || !Directory.Exists(_root))
            return 0;
        var clear = Directory.EnumerateFiles(_root, "*" + ClearEnding, SearchOption.AllDirectories).ToList();
        foreach (var path in clear)
        {
            var hash = new Sha256(Path.GetFileNameWithoutExtension(path));
            if (!File.Exists(SealedPath(hash)))
                Put(hash, File.OpenRead(path));
            File.Delete(path);
            DurableFile.SyncFolder(Path.GetDirectoryName(path)!);
        }

        return clear.Count;
    }

    /// <summary>Stores bytes that the program made itself: an original without the rows of a person who is erased.</summary>
    /// <exception cref="IOException">The file system refuses.</exception>
    public Sha256 Put(byte[] content)
    {
        var hash = Sha256.Of(content);
        Put(hash, new MemoryStream(content));
        return hash;
    }

    /// <summary>Destroys stored bytes: only for a person who is erased, or for bytes that no file of the study stands for. Nothing there is no fault.</summary>
    public void Remove(Sha256 hash)
    {
        if (_clear.TryRemove(hash, out var copy))
            File.Delete(copy);
        lock (_naming)
            RemoveStored(hash);
    }

    private void RemoveStored(Sha256 hash)
    {
        foreach (var path in new[] { ClearPath(hash), SealedPath(hash) }.Where(File.Exists))
        {
            File.Delete(path);
            DurableFile.SyncFolder(Path.GetDirectoryName(path)!);
        }

        var folderOfHash = Path.GetDirectoryName(ClearPath(hash))!;
        if (Directory.Exists(folderOfHash) && !Directory.EnumerateFileSystemEntries(folderOfHash).Any())
            Directory.Delete(folderOfHash);
    }

    /// <summary>Hashes of all stored originals, in order.</summary>
    public IEnumerable<Sha256> All() => !Directory.Exists(_root)
        ? []
        : Directory.EnumerateFiles(_root, "*", SearchOption.AllDirectories).Where(file => Path.GetExtension(file) is ClearEnding or SealedEnding)
            .Select(file => Path.GetFileNameWithoutExtension(file)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(hex => new Sha256(hex));

    /// <summary>Deletes copies that a killed run left unfinished. Take the study's writer lock first.</summary>
    /// <param name="before">Younger ones stay.</param>
    public void ClearUnfinished(DateTimeOffset before)
    {
        if (!Directory.Exists(_root))
            return;
        foreach (var file in Directory.GetFiles(_root).Where(DurableFile.IsTemporary).Where(file => File.GetLastWriteTimeUtc(file) < before.UtcDateTime))
            File.Delete(file);
        foreach (var work in Directory.GetDirectories(_root, WorkPrefix + "*").Where(work => Directory.GetLastWriteTimeUtc(work) < before.UtcDateTime))
            Directory.Delete(work, recursive: true);
    }

    /// <summary>Removes decrypted copies.</summary>
    public void Dispose()
    {
        if (_work is not null)
            Directory.Delete(_work, recursive: true);
        _work = null;
        _clear.Clear();
    }

    private string ClearPath(Sha256 hash) => PathWith(hash, ClearEnding);

    private string SealedPath(Sha256 hash) => PathWith(hash, SealedEnding);

    private string PathWith(Sha256 hash, string ending)
    {
        var hex = hash.ToString();
        return Path.Combine(_root, hex[..2], hex + ending);
    }

    private bool IsSealed(Sha256 hash) => File.Exists(SealedPath(hash));

    private string NewClearFile()
    {
        lock (_naming)
        {
            if (_work is null)
            {
                _work = Path.Combine(_root, WorkPrefix + Guid.NewGuid().ToString("N"));
                if (OperatingSystem.IsWindows())
                    Directory.CreateDirectory(_work);
                else
                    Directory.CreateDirectory(_work, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            }

            return Path.Combine(_work, Guid.NewGuid().ToString("N"));
        }
    }

    /// <summary>Decrypts a stored original, and holds it to its hash.</summary>
    private Problem? Open(Sha256 hash, Stream clear)
    {
        if (Keys?.Private is not { } key)
            return OriginalMessages.Locked(hash);
        using var stored = new FileStream(SealedPath(hash), FileMode.Open, FileAccess.Read, FileShare.Read, BufferBytes, FileOptions.SequentialScan);
        using var sha = SHA256.Create();
        using var hashed = new CryptoStream(clear, sha, CryptoStreamMode.Write, leaveOpen: true);
        if (!SealedFile.TryOpen(stored, key, hashed))
            return OriginalMessages.NotOpened(hash);
        hashed.FlushFinalBlock();
        var found = new Sha256(Convert.ToHexStringLower(sha.Hash!));
        return found == hash ? null : OriginalMessages.Damaged(hash, found);
    }

    private void Put(Sha256 hash, Stream content)
    {
        var temporary = Path.Combine(_root, DurableFile.TemporaryName());
        DurableFile.CreateFolder(_root);
        try
        {
            using (content)
            using (var copy = new FileStream(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1))
            {
                using var sealing = Keys is { } pair ? new SealingStream(copy, pair.Public) : null;
                content.CopyTo(sealing ?? (Stream)copy);
                sealing?.Complete();
                copy.Flush(flushToDisk: true);
            }

            Name(temporary, hash, new FileInfo(temporary).Length);
        }
        finally
        {
            File.Delete(temporary);
        }
    }

    private Outcome<StoredOriginal> Copy(string path)
    {
        var temporary = Path.Combine(_root, DurableFile.TemporaryName());
        try
        {
            Outcome<Sha256> read;
            long size;
            using (var copy = new FileStream(temporary, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1))
            {
                read = Keys is { } sealing ? ReadSealing(path, copy, sealing.Public) : Read(path, copy);
                copy.Flush(flushToDisk: true);
                size = new FileInfo(path) is { Exists: true } file ? file.Length : 0;
            }

            return read.Succeeded(out var hash) ? Name(temporary, hash, size) : Outcome<StoredOriginal>.Failed(read.Problems);
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

    /// <summary>Encrypts a file, and keeps what was read for this store's <see cref="Reach"/>: the vault may be locked, and the file may change.</summary>
    private Outcome<Sha256> ReadSealing(string path, Stream copy, byte[] publicKey)
    {
        var clear = NewClearFile();
        using var sealing = new SealingStream(copy, publicKey);
        Outcome<Sha256> read;
        using (var kept = new FileStream(clear, FileMode.CreateNew, FileAccess.Write))
            read = Read(path, kept, sealing);
        sealing.Complete();
        if (read.Succeeded(out var hash))
            _clear.TryAdd(hash, clear);
        else
            File.Delete(clear);
        return read;
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
            var stored = Name(temporary, hash, new FileInfo(temporary).Length);
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

    private StoredOriginal Name(string temporary, Sha256 hash, long size)
    {
        var target = Keys is null ? ClearPath(hash) : SealedPath(hash);
        lock (_naming)
        {
            DurableFile.CreateFolder(Path.GetDirectoryName(target)!);
            var isNew = DurableFile.TryName(temporary, target);
            if (isNew && !OperatingSystem.IsWindows())
                File.SetUnixFileMode(target, ReadOnlyMode);
            DurableFile.SyncFolder(Path.GetDirectoryName(target)!);
            return new StoredOriginal(hash, size, !isNew);
        }
    }

    /// <summary>Reads a file to its end and makes sure that it was the same file all the while. Failing to write the copy throws.</summary>
    private static Outcome<Sha256> Read(string path, params ReadOnlySpan<Stream?> copies)
    {
        var before = new FileInfo(path);
        if (!before.Exists)
            return OriginalMessages.Missing(path);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var size = 0L;
        var buffer = ArrayPool<byte>.Shared.Rent((int)Math.Clamp(before.Length, LeastBufferBytes, BufferBytes));
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1, FileOptions.SequentialScan);
            for (int count; (count = stream.Read(buffer)) > 0; size += count)
            {
                hash.AppendData(buffer, 0, count);
                foreach (var copy in copies)
                    Write(copy, buffer.AsSpan(0, count));
            }
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            return OriginalMessages.NotReadable(path, refused.Message);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
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
