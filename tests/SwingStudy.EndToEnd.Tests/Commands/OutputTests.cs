using System.Text.Json;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.Commands;

/// <summary>What commands print can be read: by people at any width, by programs as one document, and without escape codes wherever it goes.</summary>
public sealed class OutputTests(OutputTests.Filled filled) : IClassFixture<OutputTests.Filled>
{
    public static TheoryData<string> Commands =>
    [
        "status", "people list", "session list", "protocol show", "protocol check", "protocol history", "source check", "source try {file}", "dictionary show", "dictionary show club_head_speed",
        "audit verify", "audit log", "audit trace swings {swing} club_head_speed", "query SELECT\u00a0*\u00a0FROM\u00a0swings", "run", "ingest", "report", "calc", "decide exclude {swing} --reason Slipped.",
    ];

    [Theory]
    [MemberData(nameof(Commands))]
    public void NoTableIsWiderThanAskedAndNothingIsEscaped(string command)
    {
        const int columns = 80;
        var finished = Swingstudy.RunFor(columns, filled.Study.Root, filled.Arguments(command)).WithoutStackTrace();

        Assert.DoesNotContain('\u001b', finished.Output + finished.Error);
        // Tables are indented; sentences, paths and what others wrote are not wrapped in a file.
        Assert.All(finished.Output.Split('\n').Where(line => line.StartsWith("  ", StringComparison.Ordinal) && !line.Contains(": ", StringComparison.Ordinal)), line => Assert.True(line.Length <= columns, line));
        Assert.DoesNotMatch(@"\b1 (warnings|problems|players|sessions|files|records|aliases|swings|rows|variables|tables)\b", finished.Output);
        Assert.DoesNotMatch(@"\{BW\}|(?<![0-9.])-0\.0+(?![0-9])", finished.Output);
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void WithJsonTheOutputIsOneDocument(string command)
    {
        var finished = Swingstudy.RunIn(filled.Study.Root, [.. filled.Arguments(command), "--json"]).WithoutStackTrace();

        using var document = JsonDocument.Parse(finished.Output);
        Assert.Contains(document.RootElement.ValueKind, new[] { JsonValueKind.Object, JsonValueKind.Array });
        Assert.DoesNotContain('\u001b', finished.Output + finished.Error);
    }

    /// <summary>A study with swings in two phases, every stage run.</summary>
    public sealed class Filled : IDisposable
    {
        public Filled()
        {
            Study = new TestStudy(SensorMapping.With());
            foreach (var (day, phase) in new[] { ("04", "baseline"), ("05", "baseline"), ("06", "baseline"), ("07", "cue"), ("08", "cue"), ("09", "cue") })
            {
                Study.Run("session", "add", "P01", "--start", $"2026-05-{day} 09:55", "--phase", phase).Expect(0);
                Study.Drop($"bay/{day}.csv", SensorMapping.File(6, $"2026-05-{day}", phase == "cue" ? 43 : 41));
            }

            Study.Ingest();
            Study.Run("run");
            File.WriteAllText(Study.PathOf("new.csv"), SensorMapping.File(4, "2026-05-20"));
        }

        internal TestStudy Study { get; }

        public void Dispose() => Study.Dispose();

        /// <summary>The arguments of a command; a blank within one is a non-breaking one.</summary>
        internal string[] Arguments(string command) =>
            [.. command.Split(' ').Select(part => part.Replace("{file}", Study.PathOf("new.csv"), StringComparison.Ordinal).Replace("{swing}", "P01-20260504-1-02", StringComparison.Ordinal).Replace('\u00a0', ' '))];
    }
}
