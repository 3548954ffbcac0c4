using System.Text.Json;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.BadInput;

/// <summary>Declarations with mistakes are refused with file and line.</summary>
public sealed class DeclarationTests
{
    [Fact]
    public void AnUnknownKeyOfAMappingIsNamedWithTheNearestOne() => Refused(SensorMapping.With("mising: ['--']"), 12, "mising", "missing");

    [Fact]
    public void AUnitOfAnotherKindIsRefused() => Refused(SensorMapping.With(speed: "{ column: Speed, unit: deg }"), 11, "deg", "m/s");

    [Fact]
    public void APatternThatIsNoneIsRefused() =>
        Refused(SensorMapping.With().Replace(@"files: '.*\.(csv|xlsx)'", "files: '(.*'", StringComparison.Ordinal), 6, "(.*", "pattern");

    [Fact]
    public void AFileThatIsNoYamlIsRefused() => Refused(SensorMapping.With("text: [unclosed"), 13, "", "");

    [Fact]
    public void AnEmptyMappingIsRefused()
    {
        using var study = new TestStudy();
        File.WriteAllText(study.PathOf("sources/bay.yaml"), "");
        Assert.NotEmpty(Problems(study.Run("source", "check", "--json")));
    }

    [Fact]
    public void AContrastOfAPhaseThatIsNoneIsRefusedAndNothingIsTaken()
    {
        using var study = new TestStudy(SensorMapping.With());
        var content = SensorMapping.File();
        study.Drop("bay/a.csv", content);
        var protocol = File.ReadAllText(study.PathOf("protocol.yaml"));
        var broken = protocol.Replace("from: baseline", "from: basline", StringComparison.Ordinal);
        Assert.NotEqual(protocol, broken);
        File.WriteAllText(study.PathOf("protocol.yaml"), broken);
        foreach (var arguments in (string[][])[["protocol", "check", "--json"], ["ingest", "--json"]])
        {
            var problem = Problems(study.Run(arguments))[0];
            Assert.Contains("basline", problem.GetProperty("found").GetString()!, StringComparison.Ordinal);
            Assert.Equal(1 + broken.Split('\n').ToList().FindIndex(line => line.Contains("basline", StringComparison.Ordinal)), problem.GetProperty("row").GetInt32());
        }

        Assert.True(study.Keeps(System.Text.Encoding.UTF8.GetBytes(content)));
    }

    [Fact]
    public void AVariableThatIsDeclaredTwiceIsRefusedWithItsLine()
    {
        using var study = new TestStudy();
        var file = study.PathOf("data-dictionary/motion.yaml");
        var text = File.ReadAllText(file);
        var line = text.Split('\n').Length;
        File.WriteAllText(file, text.TrimEnd('\n') + "\n" + """
              - name: club_head_speed
                title: Again
                description: Again.
                type: number
                unit: m/s
            """ + "\n");
        var problem = Problems(study.Run("dictionary", "check", "--json")).First(problem => problem.GetProperty("found").GetString()!.Contains("club_head_speed", StringComparison.Ordinal));
        Assert.EndsWith("motion.yaml", problem.GetProperty("file").GetString()!, StringComparison.Ordinal);
        Assert.Equal(line, problem.GetProperty("row").GetInt32());
    }

    private static void Refused(string mapping, int line, string found, string mend)
    {
        using var study = new TestStudy(mapping);
        var content = SensorMapping.File();
        study.Drop("bay/a.csv", content);
        foreach (var arguments in (string[][])[["source", "check", "--json"], ["ingest", "--json"]])
        {
            var problem = Problems(study.Run(arguments))[0];
            Assert.EndsWith("bay.yaml", problem.GetProperty("file").GetString()!, StringComparison.Ordinal);
            Assert.Equal(line, problem.GetProperty("row").GetInt32());
            Assert.Contains(found, problem.GetProperty("found").GetString()!, StringComparison.Ordinal);
            Assert.Contains(mend, problem.GetProperty("mend").GetString() + problem.GetProperty("expected").GetString(), StringComparison.Ordinal);
        }

        Assert.True(study.Keeps(System.Text.Encoding.UTF8.GetBytes(content)));
    }

    private static List<JsonElement> Problems(Finished finished) => [.. finished.Expect(3).Json.GetProperty("problems").EnumerateArray()];
}
