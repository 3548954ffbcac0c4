using System.Xml.Linq;

namespace SwingStudy.Architecture.Tests;

/// <summary>The compiler holds the direction of dependencies; these tests hold the project files to the agreed graph.</summary>
public class ProjectGraphTests
{
    /// <summary>What each project may reference. An arrow that is missing here needs a changed design, not a changed test.</summary>
    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["Domain"] = [],
        ["Statistics"] = [],
        ["Motion"] = [],
        ["Storage"] = ["Domain"],
        ["Ingestion"] = ["Domain", "Storage"],
        ["Pipeline"] = ["Domain", "Storage", "Ingestion", "Statistics", "Motion"],
        ["Reporting"] = ["Domain", "Storage"],
        ["App"] = ["Domain", "Storage", "Ingestion", "Statistics", "Motion", "Pipeline", "Reporting"],
    };

    public static TheoryData<string> Projects => [.. Directory.GetDirectories(Path.Combine(Root, "src")).Select(d => Path.GetFileName(d)!)];

    [Theory]
    [MemberData(nameof(Projects))]
    public void AProjectReferencesOnlyProjectsBelowIt(string project)
    {
        var name = project["SwingStudy.".Length..];
        Assert.True(Allowed.TryGetValue(name, out var allowed), $"{project} is not in the agreed graph: give it a place in {nameof(Allowed)} and in DEVELOPERS.md.");
        var actual = References(project).ToList();
        Assert.All(actual, reference => Assert.True(allowed.Contains(reference),
            $"{project} references {reference}. Dependencies go only downward: move the shared type down, or pass it in from above."));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void AProjectIsMirroredByATestProject(string project) =>
        Assert.True(Directory.Exists(Path.Combine(Root, "tests", project + ".Tests")), $"tests/{project}.Tests is missing.");

    [Theory]
    [MemberData(nameof(Projects))]
    public void NamespacesEqualFoldersAndAreThreeDeepAtMost(string project)
    {
        var folder = Path.Combine(Root, "src", project);
        foreach (var file in Directory.GetFiles(folder, "*.cs", SearchOption.AllDirectories).Where(IsSource))
        {
            var declared = File.ReadLines(file).FirstOrDefault(line => line.StartsWith("namespace ", StringComparison.Ordinal));
            if (declared is null)
                continue;
            var inside = Path.GetRelativePath(folder, Path.GetDirectoryName(file)!);
            var expected = inside == "." ? project : project + "." + inside.Replace(Path.DirectorySeparatorChar, '.');
            Assert.True(declared == $"namespace {expected};", $"{file} declares '{declared}' but lies in the folder of '{expected}'.");
            Assert.True(expected.Split('.').Length <= 5, $"{expected} is deeper than three below the product's name.");
        }
    }

    private static string Root { get; } = FindRoot();

    private static IEnumerable<string> References(string project) =>
        XDocument.Load(Path.Combine(Root, "src", project, project + ".csproj"))
            .Descendants("ProjectReference")
            .Select(reference => Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value)["SwingStudy.".Length..]);

    private static bool IsSource(string file) =>
        !file.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj");

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "SwingStudy.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("SwingStudy.sln was not found above the test binaries.");
    }
}
