using System.Security.Cryptography;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Tables;

public sealed class CrashTests : IDisposable
{
    private readonly TemporaryStudy _study = new();

    public void Dispose() => _study.Dispose();

    [Fact]
    public void AWriterKilledAtAnyMomentLeavesTheLastVersionIntact()
    {
        var chance = new Random(20260907);
        var reached = -1L;
        for (var round = 0; round < 8; round++)
        {
            using (var writer = KilledWriter.Start(_study.Folder))
            {
                Thread.Sleep(chance.Next(20, 300));
                writer.Kill();
                writer.WaitForExit();
            }

            reached = CheckEverything(reached);
        }

        Assert.True(reached > 8, $"only {reached} versions were written between the kills");
        var table = _study.Tables.Table(Some.Swings);
        table.Vacuum(TimeSpan.FromMinutes(-1));
        Assert.DoesNotContain(Directory.GetFiles(table.Root, "*", SearchOption.AllDirectories), file => file.EndsWith(".tmp", StringComparison.Ordinal));
        CheckEverything(reached);
    }

    [Fact]
    public void AnUnfinishedLogFileIsNoVersion()
    {
        var table = _study.Tables.Table(Some.Swings);
        table.Add(table.File("P01", "a", Some.Rows("P01", 2)));
        _study.File("tables/swings/_delta_log/.1234.tmp", """{"commitInfo":{"tim""");
        var fresh = _study.Tables.Table(Some.Swings);
        Assert.Equal(0, fresh.CurrentVersion);
        Assert.Equal(1, fresh.Add(fresh.File("P02", "b", Some.Rows("P02", 2))));
    }

    [Fact]
    public void ACommitCutShortBeforeTheLogIsFinishedByDoingItAgain()
    {
        var table = _study.Tables.Table(Some.Swings);
        var written = table.File("P01", "a", Some.Rows("P01", 2));
        Assert.Equal(-1, table.CurrentVersion);
        var again = table.File("P01", "a", Some.Rows("P01", 2));
        Assert.Equal(written.Path, again.Path);
        Assert.Equal(0, table.Add(again));
    }

    [Fact]
    public void ACheckpointThatWasNotAnnouncedHarmsNobody()
    {
        var table = _study.Tables.Table(Some.Swings);
        for (var i = 0; i < 12; i++)
            table.Add(table.File("P01", $"u{i}", Some.Rows("P01", i + 1)));
        File.Delete(Path.Combine(table.Root, "_delta_log", "_last_checkpoint"));
        Assert.Equal(table.Files(), _study.Tables.Table(Some.Swings).Files());
    }

    private long CheckEverything(long atLeast)
    {
        var table = _study.Tables.Table(Some.Swings);
        var version = table.CurrentVersion;
        Assert.True(version >= atLeast, "a version that was committed is gone");
        Assert.Equal(Enumerable.Range(0, (int)version + 1).Select(number => (long)number), table.History().Select(entry => entry.Version));
        Assert.Equal(version + 1, table.Files().Count);
        Assert.All(table.Files(), file => Assert.Contains(Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(table.FullPath(file))))[..16], file.Path, StringComparison.Ordinal));
        Assert.Equal(20 * (version + 1), table.Read().Sum(rows => rows.Count));
        using var registry = new StudyRegistry(_study.Folder);
        Assert.Null(registry.Ledger.Verify());
        var originals = new OriginalStore(_study.Folder);
        Assert.All(originals.All(), hash => Some.Value(originals.Verify(hash)));
        return version;
    }
}
