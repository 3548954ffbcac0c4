using System.Diagnostics;
using System.Security.Cryptography;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.Crashes;

/// <summary>A process killed at any moment leaves a study that the next run finishes, byte for byte as if nothing had happened.</summary>
public sealed class KilledRunsTests : IDisposable
{
    private const int Kills = 50;
    private readonly string _root = Directory.CreateTempSubdirectory("swingstudy-killed-").FullName;

    [Fact]
    public void FiftyKillsDuringIngestAndRunEndInTheTablesOfAnUndisturbedRun()
    {
        var prepared = Path.Combine(_root, "prepared");
        Swingstudy.Run("demo", prepared, "--no-run").Expect(0);
        var undisturbed = Copy(prepared, "undisturbed");
        var duration = new Dictionary<string, TimeSpan> { ["ingest"] = Timed(undisturbed, "ingest"), ["run"] = Timed(undisturbed, "run") };
        var expected = TableFiles(undisturbed);

        var random = new Random(20260907);
        var killed = 0;
        for (var study = 1; killed < Kills; study++)
        {
            var disturbed = Copy(prepared, $"disturbed-{study}");
            foreach (var verb in new[] { "ingest", "run" })
            {
                while (killed < Kills && IsKilled(disturbed, verb, 60 + random.NextDouble() * 0.7 * duration[verb].TotalMilliseconds))
                    killed++;
                // It ended before its time: the machine is less busy than it was when the time was taken.
                duration[verb] *= 0.8;
                Swingstudy.RunIn(disturbed, verb).Expect(0);
            }

            Assert.Equal(expected, TableFiles(disturbed));
            Swingstudy.RunIn(disturbed, "audit", "verify").Expect(0);
        }
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private static TimeSpan Timed(string study, string verb)
    {
        var clock = Stopwatch.StartNew();
        Swingstudy.RunIn(study, verb).Expect(0);
        return clock.Elapsed;
    }

    /// <summary>Starts a verb and kills it after a while.</summary>
    /// <returns>Whether it was still alive then.</returns>
    private static bool IsKilled(string study, string verb, double milliseconds)
    {
        using var process = Swingstudy.Start(study, verb);
        var alive = !process.WaitForExit(TimeSpan.FromMilliseconds(milliseconds));
        if (alive)
            process.Kill();
        process.WaitForExit();
        return alive;
    }

    /// <summary>Path and hash of each file that the newest version of each table consists of.</summary>
    private static List<string> TableFiles(string study)
    {
        var tables = Swingstudy.RunIn(study, "status", "--json").Json.GetProperty("tables");
        var files = new List<string>();
        foreach (var table in tables.EnumerateArray())
        {
            var name = table.GetProperty("name").GetString()!;
            foreach (var file in table.GetProperty("files").EnumerateArray().Select(file => file.GetString()!))
            {
                var bytes = File.ReadAllBytes(Path.Combine(study, "tables", name, file));
                files.Add($"{name}/{file} {Convert.ToHexStringLower(SHA256.HashData(bytes))}");
            }
        }

        Assert.NotEmpty(files);
        files.Sort(StringComparer.Ordinal);
        return files;
    }

    private string Copy(string study, string name)
    {
        var to = Path.Combine(_root, name);
        Process.Start("cp", ["-a", study, to]).WaitForExit();
        return to;
    }
}
