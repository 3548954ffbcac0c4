using System.Text.Json;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.Demo;

/// <summary>The demo study, built and run once for all tests of a class.</summary>
public sealed class DemoStudyFixture : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("swingstudy-demo-").FullName;

    public DemoStudyFixture()
    {
        Folder = Path.Combine(_root, "study");
        Summary = Swingstudy.Run("demo", Folder, "--json").Expect(0).Json;
    }

    /// <summary>The study folder.</summary>
    public string Folder { get; }

    /// <summary>What <c>demo --json</c> printed.</summary>
    public JsonElement Summary { get; }

    /// <summary>A path beside the study that does not exist yet.</summary>
    public string NewPath(string name) => Path.Combine(_root, name);

    public void Dispose() => Directory.Delete(_root, recursive: true);
}
