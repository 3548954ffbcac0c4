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
        var disturbed = Copy(prepared, "disturbed");

        var clock = Stopwatch.StartNew();
        Finish(undisturbed);
        var duration = clock.Elapsed;

        var random = new Random(20260907);
        var killed = 0;
        for (var attempt = 0; killed < Kills && attempt < 10 * Kills; attempt++)
        {
            using var process = Swingstudy.Start(disturbed, attempt % 3 == 2 ? "run" : "ingest");
            var alive = !process.WaitForExit(TimeSpan.FromMilliseconds(60 + random.NextDouble() * duration.TotalMilliseconds / 2));
            if (alive)
            {
                process.Kill();
                killed++;
            }

            process.WaitForExit();
            if (killed % 10 == 9)
                Swingstudy.RunIn(disturbed, "audit", "verify").Expect(0);
        }

        Assert.Equal(Kills, killed);
        Finish(disturbed);
        Assert.Equal(TableFiles(undisturbed), TableFiles(disturbed));
        Swingstudy.RunIn(disturbed, "audit", "verify").Expect(0);
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private static void Finish(string study)
    {
        Swingstudy.RunIn(study, "ingest").Expect(0);
        Swingstudy.RunIn(study, "run").Expect(0);
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
