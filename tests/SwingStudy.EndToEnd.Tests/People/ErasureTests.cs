using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.People;

/// <summary>Erasing a person leaves no byte of them in the study folder, and everything else in place.</summary>
public sealed class ErasureTests
{
    [Fact]
    public void NothingOfAnErasedPersonIsLeftAndNothingOfTheOthersIsLost()
    {
        using var study = new CoachedStudy();
        Assert.NotEmpty(Traces.Of(study.Root, CoachedStudy.Texts, CoachedStudy.Values));
        var lines = study.Run("status", "--json").Json.GetProperty("accounting").GetProperty("lines_read").GetInt64();
        var swings = study.Count("SELECT count(*) FROM swings WHERE participant <> 'PZQ7XK41'");

        var erased = study.Run("people", "erase", CoachedStudy.Leaver, "--yes", "--json").Expect(0).Json;

        Assert.Empty(Traces.Of(study.Root, CoachedStudy.Texts, CoachedStudy.Values));
        Assert.Equal(["spring"], erased.GetProperty("releases_no_longer_reproducible").EnumerateArray().Select(name => name.GetString()));
        Assert.Equal(4, erased.GetProperty("originals_cut").GetArrayLength());
        Assert.Equal(1, erased.GetProperty("originals_gone").GetArrayLength());
        Assert.Equal(0, erased.GetProperty("remaining").GetArrayLength());
        Assert.Equal(swings, study.Count("SELECT count(*) FROM swings"));
        Assert.Equal(20, study.Count("SELECT count(*) FROM captures"));
        Assert.Equal(6, study.Run("session", "list", "--json").Json.GetProperty("sessions").GetArrayLength());
        // The file of the leaver alone is gone with its six lines; all other lines are still accounted for.
        Assert.Equal(lines - 6, study.Run("status", "--json").Json.GetProperty("accounting").GetProperty("lines_read").GetInt64());
        var verified = study.Run("audit", "verify", "--json").Expect(0).Json;
        var remarks = verified.GetProperty("checks").EnumerateArray().Single(check => check.GetProperty("name").GetString() == "erasures").GetProperty("remarks").EnumerateArray().Select(remark => remark.GetString()!).ToList();
        Assert.Contains(remarks, remark => remark.Contains("spring", StringComparison.Ordinal));
        Assert.Contains(remarks, remark => remark.Contains("captures", StringComparison.Ordinal));
        study.Run("audit", "verify", "--recompute").Expect(0);
        study.Run("export", "--release", "spring", "--to", study.PathOf("again")).Expect(4);
        study.Run("query", "SELECT count(*) FROM \"swings@0\"").Expect(3);
    }

    [Fact]
    public void RowsOfOthersAreStillFollowedToTheirRawText()
    {
        using var study = new CoachedStudy();
        study.Run("people", "erase", CoachedStudy.Leaver, "--yes").Expect(0);
        foreach (var source in new[] { "bay", "json", "ndjson" })
        {
            var capture = study.Run("query", $"SELECT capture_id, club_head_speed FROM captures WHERE source = '{source}' ORDER BY original_row LIMIT 1", "--json").Expect(0).Json.GetProperty("rows")[0];
            var origin = study.Run("audit", "trace", "captures", capture[0].GetString()!, "club_head_speed", "--json").Expect(0).Json.GetProperty("origin");
            Assert.Equal(FormattableString.Invariant($"{capture[1].GetDouble()}"), origin.GetProperty("cell").GetString());
        }
    }

    [Fact]
    public void AnErasedPersonIsRefusedAndNothingOfTheirFileIsStored()
    {
        using var study = new CoachedStudy();
        study.Run("people", "erase", CoachedStudy.Leaver, "--yes").Expect(0);
        var before = study.Run("status", "--json").Json.GetProperty("tables").GetRawText();
        var dropped = study.Drop("bay/again.csv", "Player,Time,No,Speed\n" + CoachedStudy.Csv("ÖDÖN  FJELLSTRÖM", 8));
        var byCode = study.Drop("bay/code.csv", "Player,Time,No,Speed\n" + CoachedStudy.Csv(CoachedStudy.Leaver, 9));
        var same = study.Drop("bay/alone.csv", "Player,Time,No,Speed\n" + CoachedStudy.Csv(CoachedStudy.Alias, 3, "2026-05-05"));

        var intake = Intake.Of(study.Run("ingest", "--json").Expect(4));

        foreach (var (name, path) in new[] { ("bay/again.csv", dropped), ("bay/code.csv", byCode), ("bay/alone.csv", same) })
        {
            intake.Became(name, "refused");
            Assert.Contains("Delete it", intake.Problem(name, "person-erased").GetProperty("mend").GetString()!, StringComparison.Ordinal);
            Assert.True(File.Exists(path));
            File.Delete(path);
        }

        Assert.Equal(before, study.Run("status", "--json").Json.GetProperty("tables").GetRawText());
        Assert.Empty(Traces.Of(study.Root, CoachedStudy.Texts, CoachedStudy.Values));
        study.Run("people", "add", CoachedStudy.Leaver).Expect(4);
        study.Run("people", "add", "P13", "--alias", CoachedStudy.Alias).Expect(4);
        study.Run("ingest").Expect(0);
    }

    [Fact]
    public void HeldFilesAndTheInboxAreClearedToo()
    {
        using var study = new CoachedStudy();
        study.Drop("bay/held.csv", "Player,Time,No,Speed\n" + CoachedStudy.Csv(CoachedStudy.Alias, 10) + CoachedStudy.Csv("Nobody Known", 11));
        study.Run("ingest").Expect(1);
        var waiting = study.Drop("bay/waiting.csv", "Player,Time,No,Speed\n" + CoachedStudy.Csv(CoachedStudy.SecondAlias, 12) + CoachedStudy.Csv("Jon Sample", 13, "2026-05-07"));
        study.Run("people", "erase", CoachedStudy.Leaver, "--yes").Expect(0);
        Assert.Empty(Traces.Of(study.Root, CoachedStudy.Texts, CoachedStudy.Values));
        Assert.Contains("Jon Sample", File.ReadAllText(waiting), StringComparison.Ordinal);
        Assert.Equal(0, study.Run("status", "--json").Json.GetProperty("accounting").GetProperty("held").GetInt64());
        study.Run("ingest").Expect(0);
        study.Run("audit", "verify").Expect(0);
    }

    [Fact]
    public void AnErasureKilledAnywhereIsFinishedByTheNext()
    {
        using var study = new CoachedStudy();
        var random = new Random(20260907);
        var wait = 60.0;
        for (var kills = 0; kills < 12;)
        {
            using var process = Swingstudy.Start(study.Root, "people", "erase", CoachedStudy.Leaver, "--yes");
            if (process.WaitForExit(TimeSpan.FromMilliseconds(wait)))
                break;
            process.Kill();
            process.WaitForExit();
            kills++;
            wait += 40 + (120 * random.NextDouble());
            if (IsBegun(study))
                study.Run("ingest").Expect(4);
        }

        study.Run("people", "erase", CoachedStudy.Leaver, "--yes").Expect(0);
        Assert.Empty(Traces.Of(study.Root, CoachedStudy.Texts, CoachedStudy.Values));
        study.Run("audit", "verify", "--recompute").Expect(0);
        Assert.Equal(20, study.Count("SELECT count(*) FROM captures"));
    }

    [Fact]
    public void WithoutConfirmationItIsShownWhatWouldGoAndNothingGoes()
    {
        using var study = new CoachedStudy();
        var before = study.Run("status", "--json").Json.GetProperty("tables").GetRawText();
        var asked = study.Run("people", "erase", CoachedStudy.Leaver, "--json").Expect(2).Json;
        Assert.Equal("erasure-not-confirmed", asked.GetProperty("problems")[0].GetProperty("code").GetString());
        var would = asked.GetProperty("would_erase");
        Assert.Equal(study.Count($"SELECT count(*) FROM captures WHERE participant = '{CoachedStudy.Leaver}'"), would.GetProperty("rows").GetProperty("captures").GetInt64());
        Assert.Equal(1, would.GetProperty("originals_alone").GetInt32());
        Assert.Equal(4, would.GetProperty("originals_shared").GetInt32());
        Assert.Equal("spring", would.GetProperty("releases")[0].GetString());
        Assert.Contains(would.GetProperty("files").EnumerateArray(), file => file.GetString() == "reports/study.html");
        Assert.Contains("captures", study.Run("people", "erase", CoachedStudy.Leaver).Expect(2).Output, StringComparison.Ordinal);

        var mistyped = Swingstudy.RunOnTerminal(study.Root, "Mira Testova", "people", "erase", CoachedStudy.Leaver).Expect(4);
        Assert.Contains("Type an alias", mistyped.Output, StringComparison.Ordinal);
        Assert.Equal(before, study.Run("status", "--json").Json.GetProperty("tables").GetRawText());
        Assert.NotEmpty(Traces.Of(study.Root, CoachedStudy.Texts, CoachedStudy.Values));
    }

    [Fact]
    public void AtATerminalTheAliasConfirms()
    {
        using var study = new CoachedStudy();
        Swingstudy.RunOnTerminal(study.Root, CoachedStudy.SecondAlias.ToUpperInvariant(), "people", "erase", CoachedStudy.Leaver).Expect(0);
        Assert.Empty(Traces.Of(study.Root, CoachedStudy.Texts, CoachedStudy.Values));
    }

    private static bool IsBegun(CoachedStudy study) => study.Run("people", "list", "--json").Json.GetProperty("people").EnumerateArray()
        .Any(person => person.GetProperty("status").GetString() == "being-erased");
}
