using System.Text.Json;

namespace SwingStudy.Tests.Reference;

/// <summary>The reference cases beside the tests, or those of the folder that <c>REFERENCE_CASES</c> names.</summary>
/// <remarks>
/// Every JSON file of the folder is read; each project runs the cases that <see cref="CaseKinds.Covers"/>, so that one folder serves them all.
/// </remarks>
public static class ReferenceCases
{
    public static string Folder { get; } =
        Environment.GetEnvironmentVariable("REFERENCE_CASES") is { Length: > 0 } folder
            ? folder
            : Path.Combine(AppContext.BaseDirectory, "TestData", "Reference");

    public static IReadOnlyList<ReferenceCase> All { get; } = Load();

    public static ReferenceCase Find(string id) => All.Single(c => c.Id == id);

    private static List<ReferenceCase> Load()
    {
        var cases = new List<ReferenceCase>();
        foreach (var file in Directory.EnumerateFiles(Folder, "*.json").Order(StringComparer.Ordinal))
        {
            var root = JsonDocument.Parse(File.ReadAllText(file)).RootElement;
            var topic = root.GetProperty("topic").ToString();
            foreach (var content in root.GetProperty("cases").EnumerateArray())
            {
                var item = new ReferenceCase(topic, content);
                if (CaseKinds.Covers(item))
                    cases.Add(item);
            }
        }

        return cases;
    }
}
