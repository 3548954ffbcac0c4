using System.Diagnostics;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Originals;

/// <summary>Whatever goes wrong, the file in the inbox stays.</summary>
public sealed class OriginalStoreFailureTests : IDisposable
{
    private readonly TemporaryStudy _study = new();

    public void Dispose() => _study.Dispose();

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void WhereOriginalsCannotBeAFolderTheFileStays(bool keepFile)
    {
        var path = _study.File("inbox/a.csv", "abc");
        _study.File("originals", "in the way");
        var problem = Some.Problem(new OriginalStore(_study.Folder).Take(path, keepFile));
        Assert.Equal("original-not-stored", problem.Code);
        Assert.Contains("untouched", problem.Mend, StringComparison.Ordinal);
        Assert.Equal("abc", File.ReadAllText(path));
    }

    /// <summary>A file system of 64 kB where mounting is allowed; elsewhere a folder without the right to write.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void WhereThereIsNoRoomTheFileStaysAndNothingIsLeft(bool keepFile)
    {
        var path = _study.File("inbox/a.csv", new string('x', 1_000_000));
        var small = Path.Combine(_study.Folder.Root, "small");
        Directory.CreateDirectory(small);
        var isMounted = Run("mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", small);
        try
        {
            if (!isMounted)
                Assert.True(Run("chmod", "500", small));
            var problem = Some.Problem(new OriginalStore(new StudyFolder(small)).Take(path, keepFile));
            Assert.Equal("original-not-stored", problem.Code);
            Assert.Equal(1_000_000, new FileInfo(path).Length);
            Assert.Empty(Directory.GetFiles(small, "*", SearchOption.AllDirectories));
        }
        finally
        {
            Run("chmod", "700", small);
            if (isMounted)
                Assert.True(Run("umount", small));
        }
    }

    [Fact]
    public void AcrossFileSystemsAFileIsCopiedAndThenGone()
    {
        var folder = Directory.CreateDirectory(Path.Combine("/dev/shm", Guid.NewGuid().ToString("N")));
        try
        {
            var path = Path.Combine(folder.FullName, "a.csv");
            File.WriteAllText(path, "abc");
            var store = new OriginalStore(_study.Folder);
            var stored = Some.Value(store.Take(path, keepFile: false));
            Assert.False(File.Exists(path));
            Assert.Equal(stored.Hash, Some.Value(store.Verify(stored.Hash)));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task AFileThatStillGrowsIsRefused(bool keepFile)
    {
        var path = _study.File("inbox/a.csv", new string('x', 30_000_000));
        using var stop = new CancellationTokenSource();
        var growing = Task.Run(() =>
        {
            using var stream = new FileStream(path, FileMode.Append, FileAccess.Write, FileShare.ReadWrite);
            while (!stop.IsCancellationRequested)
            {
                stream.WriteByte((byte)'y');
                stream.Flush();
            }
        }, TestContext.Current.CancellationToken);
        while (new FileInfo(path).Length == 30_000_000)
            await Task.Yield();
        var taken = new OriginalStore(_study.Folder).Take(path, keepFile);
        await stop.CancelAsync();
        await growing;
        Assert.Equal("file-changing", Some.Problem(taken).Code);
        Assert.True(File.Exists(path));
        Assert.Empty(new OriginalStore(_study.Folder).All());
    }

    private static bool Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
        process.WaitForExit();
        return process.ExitCode == 0;
    }
}
