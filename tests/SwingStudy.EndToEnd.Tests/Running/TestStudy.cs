using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace SwingStudy.EndToEnd.Tests.Running;

/// <summary>A study of its own in a temporary folder, with two invented players.</summary>
internal sealed class TestStudy : IDisposable
{
    private static readonly Lazy<string> Prepared = new(Prepare);

    /// <summary>Makes a study with the given mappings; each is stored under the name of its source.</summary>
    public TestStudy(params string[] mappings)
    {
        Root = Path.Combine(Directory.CreateTempSubdirectory("swingstudy-bad-").FullName, "study");
        Process.Start("cp", ["-a", Prepared.Value, Root]).WaitForExit();
        foreach (var mapping in mappings)
            File.WriteAllText(Path.Combine(Root, "sources", SourceOf(mapping) + ".yaml"), mapping);
    }

    private TestStudy(string prepared)
    {
        Root = Path.Combine(Directory.CreateTempSubdirectory("swingstudy-copy-").FullName, "study");
        Process.Start("cp", ["-a", prepared, Root]).WaitForExit();
    }

    /// <summary>A copy of a study that was prepared for several tests.</summary>
    public static TestStudy CopyOf(string prepared) => new(prepared);

    /// <summary>The study folder.</summary>
    public string Root { get; }

    /// <summary>Absolute path below the study folder.</summary>
    public string PathOf(string relative) => Path.Combine(Root, relative);

    /// <summary>Puts a text into the inbox as UTF-8.</summary>
    public string Drop(string name, string text) => Drop(name, Encoding.UTF8.GetBytes(text));

    /// <summary>Puts bytes into the inbox, written an hour ago, so that nothing has to wait until they settle.</summary>
    /// <param name="name">Path relative to the inbox.</param>
    /// <param name="content">The bytes.</param>
    /// <returns>Absolute path of the file.</returns>
    public string Drop(string name, byte[] content)
    {
        var path = Path.Combine(Root, "inbox", name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, content);
        File.SetLastWriteTimeUtc(path, DateTime.UtcNow.AddHours(-1));
        return path;
    }

    /// <summary>Runs a command line in the study.</summary>
    public Finished Run(params string[] arguments) => Swingstudy.RunIn(Root, arguments).WithoutStackTrace();

    /// <summary>Takes the inbox in, and holds every file to its balance and every problem to its mend.</summary>
    public Intake Ingest(int exitCode = 0, params string[] files) => Intake.Of(Run(["ingest", .. files, "--json"]).Expect(exitCode));

    /// <summary>Rows of a query.</summary>
    public List<JsonElement> Query(string sql) => [.. Run("query", sql, "--json").Expect(0).Json.GetProperty("rows").EnumerateArray()];

    /// <summary>Name, version and files of each table.</summary>
    public string Tables() => Run("status", "--json").Json.GetProperty("tables").GetRawText();

    /// <summary>Whether the bytes lie in the inbox or among the originals.</summary>
    public bool Keeps(byte[] content)
    {
        var hash = Convert.ToHexStringLower(SHA256.HashData(content));
        return File.Exists(PathOf($"originals/{hash[..2]}/{hash}.bin"))
            || Directory.EnumerateFiles(PathOf("inbox"), "*", SearchOption.AllDirectories).Any(file => File.ReadAllBytes(file).AsSpan().SequenceEqual(content));
    }

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(Path.GetDirectoryName(Root)!, recursive: true);

    private static string SourceOf(string mapping) =>
        mapping.Split('\n').First(line => line.StartsWith("source:", StringComparison.Ordinal))["source:".Length..].Trim();

    private static string Prepare()
    {
        var root = Path.Combine(Directory.CreateTempSubdirectory("swingstudy-prepared-").FullName, "study");
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(Path.GetDirectoryName(root)!, recursive: true);
        Swingstudy.Run("new", root, "--protocol", "cue-pre-post", "--zone", "Europe/Berlin").Expect(0);
        foreach (var (code, alias) in new[] { ("P01", "Ada Invented"), ("P02", "Ben Invented") })
        {
            Swingstudy.RunIn(root, "people", "add", code, "--alias", alias, "--age-band", "30-44").Expect(0);
            Swingstudy.RunIn(root, "people", "consent", code, "--scope", "research", "--form", "1", "--language", "en", "--taken-by", "office").Expect(0);
        }

        return root;
    }
}
