using System.Text.Json;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.Findings;

/// <summary>
/// The jump inside one lesson: about 88 to 101 mph with a mid iron, four or five swings before and after the cue (common practice, no source). However
/// large it is, nobody can tell it from warming up, effort and the luck of a day.
/// </summary>
public sealed class OneLessonTests
{
    private const string Speed = "{ column: Speed, unit: '[mi_i]/h' }";

    [Fact]
    public void AJumpInsideOneLessonCannotBeTold()
    {
        using var study = new TestStudy(SensorMapping.With(speed: Speed));
        Session(study, "P01", "2026-05-04 10:00", "baseline");
        Session(study, "P01", "2026-05-04 10:40", "cue");
        study.Drop("bay/lesson.csv", "Player,Time,No,Speed\n" + Swings("Ada Invented", "2026-05-04 10", 5, [87, 89, 88, 88.5]) + Swings("Ada Invented", "2026-05-04 10", 45, [100, 102, 101, 100.5, 101.5]));

        var finding = Finding(study, "P01");

        Assert.Equal("cannot tell", finding.Verdict);
        Assert.Contains("rose by 13 mph", finding.Statement, StringComparison.Ordinal);
        Assert.Contains("nobody can tell what that change is worth", finding.Statement, StringComparison.Ordinal);
        Assert.Contains("one-day: all swings of baseline and cue were struck on one day", finding.Reasons, StringComparison.Ordinal);
        Assert.Contains("to-settle: measure baseline and cue on different days", finding.Reasons, StringComparison.Ordinal);
        var page = File.ReadAllText(study.Run("report", "--player", "P01", "--json").Expect(0).Json.GetProperty("file").GetString()!);
        Assert.Contains("Nobody can tell from these data", page, StringComparison.Ordinal);
    }

    [Fact]
    public void NorCanItWhenTheStudyKnowsHowMuchDaysDiffer()
    {
        using var study = new TestStudy(SensorMapping.With(speed: Speed));
        Session(study, "P01", "2026-05-04 10:00", "baseline");
        Session(study, "P01", "2026-05-04 10:40", "cue");
        var rows = Swings("Ada Invented", "2026-05-04 10", 5, [87, 89, 88, 88.5]) + Swings("Ada Invented", "2026-05-04 10", 45, [100, 102, 101, 100.5]);
        for (var day = 10; day < 14; day++)
        {
            Session(study, "P02", $"2026-05-{day} 10:00", day < 12 ? "baseline" : "cue");
            rows += Swings("Ben Invented", $"2026-05-{day} 10", 5, [90 + (day % 2), 91, 90.5, 89.5 + (day % 3)]);
        }

        study.Drop("bay/lessons.csv", "Player,Time,No,Speed\n" + rows);

        Assert.Equal("cannot tell", Finding(study, "P01").Verdict);
        Assert.NotEqual("cannot tell", Finding(study, "P02").Verdict);
    }

    [Fact]
    public void OneSessionBeforeAndOneAfterOnOtherDaysAskForFurtherSessions()
    {
        using var study = new TestStudy(SensorMapping.With(speed: Speed));
        Session(study, "P01", "2026-05-04 10:00", "baseline");
        Session(study, "P01", "2026-05-11 10:00", "cue");
        study.Drop("bay/two days.csv", "Player,Time,No,Speed\n" + Swings("Ada Invented", "2026-05-04 10", 5, [87, 89, 88, 88.5]) + Swings("Ada Invented", "2026-05-11 10", 5, [100, 102, 101, 100.5]));

        var finding = Finding(study, "P01");

        Assert.Equal("cannot tell", finding.Verdict);
        Assert.Contains("one-session-without-session-variance", finding.Reasons, StringComparison.Ordinal);
        Assert.Contains("to-settle: record 4 more sessions of baseline and 4 more sessions of cue on other days", finding.Reasons, StringComparison.Ordinal);
    }

    private static void Session(TestStudy study, string player, string start, string phase) =>
        study.Run("session", "add", player, "--start", start, "--phase", phase).Expect(0);

    private static string Swings(string player, string hour, int minute, double[] speeds) =>
        string.Concat(speeds.Select((speed, i) => FormattableString.Invariant($"{player},{hour}:{minute + i:00}:00,{i + 1},{speed}\n")));

    private static (string Verdict, string Statement, string Reasons) Finding(TestStudy study, string player)
    {
        study.Ingest();
        study.Run("run").Expect(0);
        var row = Assert.Single(study.Query(
            $"SELECT verdict, statement, reasons FROM findings f WHERE participant = '{player}' AND outcome = 'club_head_speed' AND contrast = 'with-cue'"));
        return (Text(row[0]), Text(row[1]), Text(row[2]));
    }

    private static string Text(JsonElement cell) => cell.GetString()!;
}
