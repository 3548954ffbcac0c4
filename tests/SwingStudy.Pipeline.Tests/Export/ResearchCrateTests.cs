using System.Text.Json.Nodes;
using NodaTime;
using SwingStudy.Pipeline.Export;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Export;

public sealed class ResearchCrateTests
{
    // What RO-Crate 1.2 asks of descriptor and root.
    [Fact]
    public void TheCrateNamesItsRootAndEveryFileOfTheFolder()
    {
        using var study = new TestStudy();
        study.Swings("P01", 0, "baseline", 40, 41, 42);
        study.Run();
        var folder = Path.Combine(study.Setup.Folder.Root, "out");
        var export = new StudyExport(study.Setup, study.Registry);
        Assert.True(export.Write(new ExportRequest(folder, ExportRequest.AllFormats, export.NewestVersions(), "A study"), Instant.FromUtc(2026, 9, 7, 8, 0)).Succeeded(out _));

        var crate = JsonNode.Parse(File.ReadAllText(Path.Combine(folder, "ro-crate-metadata.json")))!;
        var graph = crate["@graph"]!.AsArray().ToDictionary(node => node!["@id"]!.GetValue<string>(), node => node!.AsObject());

        Assert.Equal("https://w3id.org/ro/crate/1.2/context", crate["@context"]!.GetValue<string>());
        Assert.Equal("./", graph["ro-crate-metadata.json"]["about"]!["@id"]!.GetValue<string>());
        Assert.Equal("https://w3id.org/ro/crate/1.2", graph["ro-crate-metadata.json"]["conformsTo"]!["@id"]!.GetValue<string>());
        var root = graph["./"];
        Assert.All(new[] { "name", "description", "datePublished", "license" }, key => Assert.NotNull(root[key]));
        string[] parts = [.. root["hasPart"]!.AsArray().Select(part => part!["@id"]!.GetValue<string>())];
        Assert.All(parts, part => Assert.Contains(part, graph.Keys));
        var files = Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(folder, file).Replace('\\', '/'));
        Assert.Equal(files.Where(file => file != "ro-crate-metadata.json").Order(StringComparer.Ordinal), parts.Order(StringComparer.Ordinal));
    }
}
