using SwingStudy.Domain.Tables;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Intake;

/// <summary>A run may end between any two of its steps: originals, data files, commits, registry, inbox.</summary>
public sealed class InterruptedIntakeTests
{
    private const string Headings = "No;Player;When;Club speed\n";

    [Theory]
    [InlineData("originals")]
    [InlineData("originals", "data files")]
    [InlineData("originals", "data files", "captures log")]
    [InlineData("originals", "data files", "captures log", "rejects log")]
    [InlineData("originals", "data files", "captures log", "rejects log", "registry")]
    public void WhateverStepWasReachedTheNextRunEndsInTheSameTables(params string[] reached)
    {
        using var before = Prepared();
        using var undisturbed = before.Copy(threads: 2);
        undisturbed.Run();
        using var disturbed = before.Copy(threads: 2);
        foreach (var step in reached)
            Bring(step, undisturbed, disturbed);
        using var rerun = disturbed.Copy(threads: 2);
        rerun.Run();
        Assert.Equal(undisturbed.TableFiles(), rerun.TableFiles());
        Assert.Equal(
            undisturbed.Registry.IntakeFiles().Select(file => (file.Hash, file.Status, file.RowsTaken, file.LinesRead)).ToHashSet(),
            rerun.Registry.IntakeFiles().Select(file => (file.Hash, file.Status, file.RowsTaken, file.LinesRead)).ToHashSet());
        Assert.Empty(rerun.InboxFiles());
        Assert.All(rerun.Tables.Table(StudyTables.Captures(Some.Dictionary)).Files().GroupBy(file => (file.Unit, file.Partition)), group => Assert.Single(group));
    }

    [Fact]
    public void RowsOfAnInterruptedRunWhoseFileWentAwayAreTakenOutAgain()
    {
        using var before = Prepared();
        using var complete = before.Copy(threads: 2);
        complete.Run();
        using var disturbed = before.Copy(threads: 2);
        foreach (var step in (string[])["originals", "data files", "captures log", "rejects log"])
            Bring(step, complete, disturbed);
        File.Delete(Path.Combine(disturbed.Folder.Inbox, "bay", "b.csv"));
        using var rerun = disturbed.Copy(threads: 2);
        Assert.Equal([FileOutcome.Taken], rerun.Run().Select(file => file.Outcome));
        Assert.Equal(["1", "2"], rerun.Captures("sequence"));
    }

    [Fact]
    public void AFileThatArrivesBetweenTheRunsChangesTheBatchAndNoRowStandsTwice()
    {
        using var before = Prepared();
        using var complete = before.Copy(threads: 2);
        complete.Run();
        using var disturbed = before.Copy(threads: 2);
        foreach (var step in (string[])["originals", "data files", "captures log", "rejects log"])
            Bring(step, complete, disturbed);
        disturbed.Drop("bay/a0.csv", Headings + "9;Fern;06.09.2026 10:00:00;90\n");
        using var rerun = disturbed.Copy(threads: 2);
        rerun.Run();
        Assert.Equal(["9", "1", "2", "3", "4"], rerun.Captures("sequence"));
        Assert.Single(rerun.Tables.Table(StudyTables.Captures(Some.Dictionary)).Files());
        rerun.Run();
        Assert.Single(rerun.Tables.Table(StudyTables.Captures(Some.Dictionary)).Files());
    }

    private static TestStudy Prepared()
    {
        var study = new TestStudy(Some.Mapping).With("P01", "Fern");
        study.Drop("bay/a.csv", Headings + "1;Fern;07.09.2026 10:00:00;90\n2;Fern;07.09.2026 10:01:00;91\n");
        study.Drop("bay/b.csv", Headings + "2;Fern;07.09.2026 10:01:00;91\n3;Fern;07.09.2026 10:02:00;x\n4;Fern;07.09.2026 10:03:00;92\n");
        return study;
    }

    private static void Bring(string step, TestStudy from, TestStudy to)
    {
        switch (step)
        {
            case "originals": CopyTree(from.Folder.Originals, to.Folder.Originals, _ => true); break;
            case "data files": CopyTree(from.Folder.Tables, to.Folder.Tables, path => !path.Contains("_delta_log", StringComparison.Ordinal)); break;
            case "captures log": CopyTree(Path.Combine(from.Folder.Tables, "captures"), Path.Combine(to.Folder.Tables, "captures"), _ => true); break;
            case "rejects log": CopyTree(Path.Combine(from.Folder.Tables, "rejects"), Path.Combine(to.Folder.Tables, "rejects"), _ => true); break;
            default: CopyTree(from.Folder.Root, to.Folder.Root, path => Path.GetFileName(path).StartsWith("study.db", StringComparison.Ordinal)); break;
        }
    }

    private static void CopyTree(string from, string to, Func<string, bool> wanted)
    {
        foreach (var path in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories).Where(wanted))
        {
            var target = Path.Combine(to, Path.GetRelativePath(from, path));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            using var source = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var copy = new FileStream(target, FileMode.Create, FileAccess.Write, FileShare.ReadWrite);
            source.CopyTo(copy);
        }
    }
}
