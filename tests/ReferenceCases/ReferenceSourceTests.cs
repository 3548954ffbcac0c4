using System.Text.Json;

namespace SwingStudy.Tests.Reference;

public class ReferenceSourceTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "TestData", "Reference");

    [Fact]
    public void TheReadMeListsTheSourceOfEveryReferenceCaseAndNoOther()
    {
        var listed = File.ReadAllLines(Path.Combine(Folder, "README.md")).Where(line => line.StartsWith("- ", StringComparison.Ordinal)).Select(line => line[2..]);
        Assert.Equal(Sources().Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
    }

    private static HashSet<string> Sources()
    {
        var sources = new HashSet<string>(StringComparer.Ordinal);
        foreach (var file in Directory.GetFiles(Folder, "*.json"))
        {
            using var document = JsonDocument.Parse(File.ReadAllBytes(file));
            foreach (var one in document.RootElement.GetProperty("cases").EnumerateArray())
                sources.Add(string.Join(' ', one.GetProperty("source").GetString()!.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
        }

        return sources;
    }
}
