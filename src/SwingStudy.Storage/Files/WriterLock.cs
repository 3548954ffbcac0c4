using System.Globalization;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Studies;

namespace SwingStudy.Storage.Files;

/// <summary>The right to write a study: one process at a time. Readers never need it.</summary>
/// <remarks>The operating system holds the lock and lets go of it when the process ends in whatever way, so a lock is never stale.</remarks>
public sealed class WriterLock : IDisposable
{
    private readonly FileStream _held;
    private readonly string _holderFile;

    private WriterLock(FileStream held, string holderFile)
    {
        _held = held;
        _holderFile = holderFile;
    }

    /// <summary>Takes the lock, or says who has it.</summary>
    /// <returns>The lock, to be disposed when writing is done; or the problem <c>study-locked</c> or <c>study-not-writable</c>.</returns>
    /// <exception cref="IOException">The disk is full or fails.</exception>
    public static Outcome<WriterLock> Take(StudyFolder folder)
    {
        var file = Path.Combine(folder.Root, ".writer.lock");
        var holderFile = Path.Combine(folder.Root, ".writer.holder");
        FileStream? held = null;
        try
        {
            Directory.CreateDirectory(folder.Root);
            held = new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            File.WriteAllText(holderFile, string.Create(CultureInfo.InvariantCulture, $"process {Environment.ProcessId} on {Environment.MachineName}"));
            var taken = new WriterLock(held, holderFile);
            held = null;
            return taken;
        }
        catch (UnauthorizedAccessException refused)
        {
            return new Problem("study-not-writable", new Place(folder.Root), refused.Message, "a study folder you may write to",
                "Ask its owner for the right to write, or work on a copy.");
        }
        catch (IOException) when (held is null && File.Exists(file))
        {
            // The file is there and does not open: another holds it. Any other refusal, such as a full disk, is a fault.
            var holder = File.Exists(holderFile) ? File.ReadAllText(holderFile) : "another process";
            return new Problem("study-locked", new Place(folder.Root), $"{holder} is writing this study", "one writer at a time",
                "Wait until it has finished and run the command again; reading commands work meanwhile.");
        }
        finally
        {
            held?.Dispose();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        File.Delete(_holderFile);
        _held.Dispose();
    }
}
