using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;
using SwingStudy.Domain.Studies;
using SwingStudy.Storage.Originals;
using SwingStudy.Storage.Registry;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Storage.Tests.Support;

/// <summary>This very test program as a process that writes a study, to be killed at any moment; it ends by itself when nobody does.</summary>
internal static class KilledWriter
{
    private const int LongestLifeMillis = 30_000;
    private const string FolderVariable = "SWINGSTUDY_TEST_ENDLESS_WRITER";

    /// <summary>Starts it and waits until it has written once.</summary>
    public static Process Start(StudyFolder folder)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!) { RedirectStandardOutput = true, UseShellExecute = false };
        start.Environment[FolderVariable] = folder.Root;
        var process = Process.Start(start)!;
        Assert.Equal("writing", process.StandardOutput.ReadLine());
        return process;
    }

    [ModuleInitializer]
    internal static void WriteWhenAsked()
    {
        if (Environment.GetEnvironmentVariable(FolderVariable) is not { Length: > 0 } root)
            return;
        Write(new StudyFolder(root));
        Environment.Exit(0);
    }

    private static void Write(StudyFolder folder)
    {
        var table = new TableStore(folder).Table(Some.Swings);
        using var registry = new StudyRegistry(folder);
        var originals = new OriginalStore(folder);
        Directory.CreateDirectory(folder.Inbox);
        var first = table.CurrentVersion + 1;
        var end = Environment.TickCount64 + LongestLifeMillis;
        for (var i = first; Environment.TickCount64 < end; i++)
        {
            var unit = string.Create(CultureInfo.InvariantCulture, $"unit-{i}");
            var export = Path.Combine(folder.Inbox, unit + ".csv");
            File.WriteAllText(export, unit);
            Some.Value(originals.Take(export, keepFile: false));
            table.Add(table.File("P01", unit, Some.Rows("P01", 20)));
            registry.Act("writer", "test", _ => $$"""{"unit":"{{unit}}"}""");
            if (i == first)
                Console.WriteLine("writing");
        }
    }
}
