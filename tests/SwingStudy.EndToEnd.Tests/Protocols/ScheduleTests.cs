using System.Text.Json;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.Protocols;

/// <summary>Chance decides once, before data.</summary>
public sealed class ScheduleTests
{
    [Fact]
    public void ANewUserGoesFromATemplateToACalendar()
    {
        var root = Path.Combine(Directory.CreateTempSubdirectory("swingstudy-plan-").FullName, "study");
        try
        {
            Swingstudy.Run("new", root, "--protocol", "cue-multiple-baseline").Expect(0);
            foreach (var player in new[] { "P01", "P02", "P03", "P04" })
                Swingstudy.RunIn(root, "people", "add", player, "--alias", player).Expect(0);
            Swingstudy.RunIn(root, "protocol", "lock").Expect(0);
            var drawn = Swingstudy.RunIn(root, "protocol", "schedule", "--start", "2026-09-07", "--ics", "plan.ics", "--csv", "plan.csv", "--json").Expect(0).Json;

            Assert.Equal((24, true), (drawn.GetProperty("draws")[0].GetProperty("assignments").GetDouble(), drawn.GetProperty("draws")[0].GetProperty("order_drawn").GetBoolean()));
            Assert.Equal([5, 8, 11, 14], drawn.GetProperty("players").EnumerateArray().Select(player => player.GetProperty("start").GetInt32()).Order());
            Assert.Equal(1 + (4 * 22), File.ReadAllLines(Path.Combine(root, "plan.csv")).Length);
            Assert.Equal(4 * 22, File.ReadAllText(Path.Combine(root, "plan.ics")).Split("BEGIN:VEVENT").Length - 1);
        }
        finally
        {
            Directory.Delete(Path.GetDirectoryName(root)!, recursive: true);
        }
    }

    [Fact]
    public void APlayerWhoWasDrawnWithOthersCanBeErased()
    {
        var root = Path.Combine(Directory.CreateTempSubdirectory("swingstudy-plan-").FullName, "study");
        try
        {
            Swingstudy.Run("new", root, "--protocol", "cue-multiple-baseline").Expect(0);
            foreach (var player in new[] { "P01", "P02", "P03", "PQX7Z4" })
                Swingstudy.RunIn(root, "people", "add", player, "--alias", player).Expect(0);
            Swingstudy.RunIn(root, "protocol", "lock").Expect(0);
            Swingstudy.RunIn(root, "protocol", "schedule").Expect(0);
            Swingstudy.RunIn(root, "people", "erase", "PQX7Z4", "--yes").Expect(0);

            Assert.Equal(["P01", "P02", "P03"], Players(Swingstudy.RunIn(root, "protocol", "schedule", "--show", "--json")).Select(player => player.GetProperty("participant").GetString()!));
            Swingstudy.RunIn(root, "run").Expect(0);
            Swingstudy.RunIn(root, "audit", "verify").Expect(0);
            Assert.Empty(People.Traces.Of(root, ["PQX7Z4"], []));
        }
        finally
        {
            Directory.Delete(Path.GetDirectoryName(root)!, recursive: true);
        }
    }

    [Fact]
    public void NothingIsDrawnFromAProtocolThatMayStillChange()
    {
        using var study = new PlannedStudy();

        Assert.Equal("protocol-not-locked", study.Refused("protocol", "schedule").GetProperty("code").GetString());
    }

    [Fact]
    public void ADrawStandsUntilAnAmendmentSaysWhyItShallNot()
    {
        using var study = new PlannedStudy();
        study.Run("protocol", "lock").Expect(0);
        var first = Players(study.Run("protocol", "schedule", "--json"));
        Assert.Equal("already-drawn", study.Refused("protocol", "schedule").GetProperty("code").GetString());
        Assert.Equal("redraw-needs-amendment", study.Refused("protocol", "schedule", "--redraw").GetProperty("code").GetString());

        study.Edit("latest_session: 6", "latest_session: 9");
        study.Raise("1.1.0");
        study.Run("protocol", "amend", "--reason", "A wider window.", "--known", "Nothing.").Expect(0);
        Assert.Equal("already-drawn", study.Refused("protocol", "schedule").GetProperty("code").GetString());
        var second = Players(study.Run("protocol", "schedule", "--redraw", "--json"));

        Assert.Equal((4, 7), (first[0].GetProperty("admissible").GetProperty("listed").GetArrayLength(), second[0].GetProperty("admissible").GetProperty("listed").GetArrayLength()));
        Assert.Equal(second.Select(Text), Players(study.Run("protocol", "schedule", "--show", "--json")).Select(Text));
        Assert.Contains("protocol.schedule-shown", study.Run("audit", "log", "--json").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ARedrawAfterDataIsRefusedForThePlayerWhoHasThem()
    {
        using var study = new PlannedStudy();
        study.Run("protocol", "lock").Expect(0);
        study.Run("protocol", "schedule").Expect(0);
        study.Run("session", "add", "P01", "--start", "2026-05-04 10:00", "--phase", "quiet-weeks").Expect(0);
        study.Edit("latest_session: 6", "latest_session: 9");
        study.Raise("1.1.0");
        study.Run("protocol", "amend", "--reason", "A wider window.", "--known", "One session.").Expect(0);

        var problem = study.Refused("protocol", "schedule", "--redraw");
        Assert.Equal("data-exist", problem.GetProperty("code").GetString());
        Assert.Contains("P01", problem.GetProperty("found").GetString()!, StringComparison.Ordinal);
        Assert.Contains("--player P02", problem.GetProperty("mend").GetString()!, StringComparison.Ordinal);
        Assert.Equal("P02", Assert.Single(Players(study.Run("protocol", "schedule", "--redraw", "--player", "P02", "--json"))).GetProperty("participant").GetString());
    }

    [Fact]
    public void ADrawAfterTheFirstSessionIsRefusedAndLateJoinersAreDrawnAlone()
    {
        using var study = new PlannedStudy();
        study.Run("protocol", "lock").Expect(0);
        study.Run("session", "add", "P01", "--start", "2026-05-04 10:00", "--phase", "quiet-weeks").Expect(0);
        Assert.Equal("data-exist", study.Refused("protocol", "schedule").GetProperty("code").GetString());
        study.Run("protocol", "schedule", "--player", "P02").Expect(0);
        study.Run("people", "add", "P03", "--alias", "Cy Invented").Expect(0);

        Assert.Equal("P03", Assert.Single(Players(study.Run("protocol", "schedule", "--player", "P03", "--json"))).GetProperty("participant").GetString());
    }

    [Fact]
    public void RowsThatWereTakenInWithoutASessionAreDataToo()
    {
        using var study = new PlannedStudy();
        study.Run("protocol", "lock").Expect(0);
        study.Drop("bay/early.csv", SensorMapping.File(8));
        study.Run("ingest").Expect(0);
        var problem = study.Refused("protocol", "schedule");
        Assert.Equal("data-exist", problem.GetProperty("code").GetString());
        study.Run("run").Expect(0);
        Assert.Equal("data-exist", study.Refused("protocol", "schedule").GetProperty("code").GetString());
    }

    [Fact]
    public void ASessionThatIsStillToComeIsNoData()
    {
        using var study = new PlannedStudy();
        study.Run("protocol", "lock").Expect(0);
        study.Run("session", "add", "P01", "--start", "2126-05-04 10:00", "--phase", "quiet-weeks").Expect(0);

        study.Run("protocol", "schedule").Expect(0);
    }

    private static List<JsonElement> Players(Finished finished) => [.. finished.Expect(0).Json.GetProperty("players").EnumerateArray()];

    private static string Text(JsonElement player) => $"{player.GetProperty("participant")} {player.GetProperty("assignment")}";
}
