namespace SwingStudy.EndToEnd.Tests.Protocols;

/// <summary>What happens to a plan and to blindness once data are there goes on record.</summary>
public sealed class UnblindTests
{
    [Fact]
    public void AnAmendmentAfterDataAndAnUnblindingGoOnRecord()
    {
        using var study = new PlannedStudy();
        study.Run("protocol", "lock").Expect(0);
        study.Measure();
        var codes = Codes(study);
        Amend(study);
        Assert.Equal(codes, Codes(study));
        Unblind(study, codes);
        study.Run("audit", "verify").Expect(0);
    }

    private static void Amend(PlannedStudy study)
    {
        study.Edit("contrasts:\n", "  - { variable: ball_speed, role: secondary }\ncontrasts:\n");
        study.Raise("1.1.0");
        study.Run("protocol", "amend", "--reason", "The coaches ask for it.", "--known", "All results so far.").Expect(0);

        var amended = study.Run("protocol", "history", "--json").Expect(0).Json.GetProperty("versions")[1];
        Assert.True(amended.GetProperty("after_data").GetBoolean());
        Assert.Equal(["quiet-weeks 2 16", "shove-weeks 2 16", "weeks-later 0 0"], amended.GetProperty("taken").EnumerateArray()
            .Select(data => $"{data.GetProperty("phase").GetString()} {data.GetProperty("sessions").GetInt32()} {data.GetProperty("swings").GetInt32()}"));
    }

    private static void Unblind(PlannedStudy study, List<string> codes)
    {
        Assert.Equal("reason-missing", study.Refused("protocol", "unblind").GetProperty("code").GetString());
        Assert.Equal(codes, Codes(study));
        var told = study.Run("protocol", "unblind", "--reason", "The analysis is done.", "--known", "All tables, masked.", "--json").Expect(0).Json;
        Assert.Equal(codes, told.GetProperty("codes").EnumerateArray().Where(code => code.GetProperty("kind").GetString() == "phase" && code.GetProperty("name").GetString() != "weeks-later")
            .Select(code => code.GetProperty("code").GetString()!).Order(StringComparer.Ordinal));
        Assert.Contains("quiet-weeks", study.Run("query", "SELECT DISTINCT phase FROM swings").Expect(0).Output, StringComparison.Ordinal);
        Assert.Contains("shove-effect", study.Run("query", "SELECT contrast FROM effects").Expect(0).Output, StringComparison.Ordinal);
        study.Run("report").Expect(0);

        var entries = study.Run("audit", "log", "--json").Expect(0).Json.GetProperty("entries").EnumerateArray().ToLookup(act => act.GetProperty("act").GetString(), act => act.GetProperty("details"));
        var amended = Assert.Single(entries["protocol.amend"]);
        Assert.Equal(("The coaches ask for it.", "All results so far."), (amended.GetProperty("reason").GetString(), amended.GetProperty("known").GetString()));
        Assert.Equal(["ball_speed/shove-effect", "ball_speed/shove-kept"], amended.GetProperty("planned_new").EnumerateArray().Select(name => name.GetString()));
        var unblinded = Assert.Single(entries["protocol.unblind"]);
        Assert.Equal(("The analysis is done.", 16), (unblinded.GetProperty("reason").GetString(), unblinded.GetProperty("taken")[0].GetProperty("swings").GetInt32()));
        Assert.Equal("already-unblinded", study.Refused("protocol", "unblind", "--reason", "Again.").GetProperty("code").GetString());
    }

    private static List<string> Codes(PlannedStudy study) =>
        [.. study.Run("query", "SELECT DISTINCT phase FROM swings ORDER BY phase", "--json").Expect(0).Json.GetProperty("rows").EnumerateArray().Select(row => row[0].GetString()!)];
}
