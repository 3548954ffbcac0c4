using System.Diagnostics;
using System.Text.Json;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.Demo;

/// <summary>What somebody changes behind the program's back is found by <c>audit verify</c>, each in its own check.</summary>
public sealed class TamperingTests(DemoStudyFixture demo) : IClassFixture<DemoStudyFixture>
{
    [Fact]
    public void AChangedByteOfAnOriginalIsFound() => Assert.Equal(["originals"], BrokenAfter(study =>
        Flip(Directory.GetFiles(Path.Combine(study, "originals"), "*", SearchOption.AllDirectories).Order().First())));

    [Fact]
    public void AChangedByteOfATableIsFound() => Assert.Equal(["table effects"], BrokenAfter(study =>
        Flip(Directory.GetFiles(Path.Combine(study, "tables", "effects"), "*.parquet", SearchOption.AllDirectories).Order().First())));

    [Fact]
    public void AnOriginalThatIsGoneIsFound() => Assert.Equal(["originals"], BrokenAfter(study =>
        File.Delete(Directory.GetFiles(Path.Combine(study, "originals"), "*", SearchOption.AllDirectories).Order().First())));

    [Fact]
    public void ATableFileThatIsGoneIsFound() => Assert.Contains("table swings", BrokenAfter(study =>
        File.Delete(Directory.GetFiles(Path.Combine(study, "tables", "swings"), "*.parquet", SearchOption.AllDirectories).Order().First())));

    private List<string> BrokenAfter(Action<string> tamper)
    {
        var copy = demo.NewPath(Guid.NewGuid().ToString("N"));
        Process.Start("cp", ["-a", demo.Folder, copy]).WaitForExit();
        tamper(copy);
        var verified = Swingstudy.RunIn(copy, "audit", "verify", "--json").Expect(1).Json;
        Assert.False(verified.GetProperty("passed").GetBoolean());
        return [.. verified.GetProperty("checks").EnumerateArray().Where(check => !check.GetProperty("passed").GetBoolean()).Select(Named)];
    }

    private static string Named(JsonElement check)
    {
        Assert.All(check.GetProperty("problems").EnumerateArray(), problem => Assert.NotEmpty(problem.GetProperty("mend").GetString()!));
        return check.GetProperty("name").GetString()!;
    }

    private static void Flip(string file)
    {
        File.SetAttributes(file, FileAttributes.Normal);
        var bytes = File.ReadAllBytes(file);
        bytes[bytes.Length / 2] ^= 1;
        File.WriteAllBytes(file, bytes);
    }
}
