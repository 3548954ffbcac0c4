using System.Text.Json;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.Demo;

/// <summary>The main job as a user runs it, on the demo study.</summary>
public sealed class DemoStudyTests(DemoStudyFixture demo) : IClassFixture<DemoStudyFixture>
{
    [Fact]
    public void PlantedEffectsLieInTheirIntervals()
    {
        var planted = demo.Summary.GetProperty("planted").EnumerateArray().ToList();
        // Eight players' speed, five players' forces in two outcomes, three players' wrists; two contrasts each.
        Assert.Equal(42, planted.Count);
        Assert.True(planted.Count(row => row.GetProperty("inside").GetBoolean()) >= 39, demo.Summary.ToString());
        Assert.All(planted.Where(row => row.GetProperty("planted").GetDouble() == 0), row => Assert.NotEqual("supported", row.GetProperty("verdict").GetString()));
    }

    [Fact]
    public void EveryLineIsAccountedFor()
    {
        var intake = demo.Summary.GetProperty("intake");
        Assert.Equal(
            intake.GetProperty("lines_read").GetInt64(),
            intake.GetProperty("rows_taken").GetInt64() + intake.GetProperty("rows_rejected").GetInt64() + intake.GetProperty("lines_not_data").GetInt64());
        Assert.Equal(0, intake.GetProperty("held").GetInt32());
        Assert.True(Swingstudy.RunIn(demo.Folder, "audit", "verify", "--json").Expect(0).Json.GetProperty("passed").GetBoolean());
    }

    [Fact]
    public void AValueIsTracedToFileRowAndRawText()
    {
        var swing = Rows("SELECT swing_id, club_head_speed FROM swings WHERE club_head_speed IS NOT NULL ORDER BY swing_id LIMIT 1")[0];
        var origins = Origins(Trace("swings", swing[0].GetString()!, "club_head_speed")).Where(origin => origin.GetProperty("cell").ValueKind != JsonValueKind.Null).ToList();
        Assert.NotEmpty(origins);
        Assert.All(origins, origin =>
        {
            Assert.True(origin.GetProperty("row").GetInt32() > 0);
            Assert.Contains(origin.GetProperty("cell").GetString()!, origin.GetProperty("raw").GetString()!, StringComparison.Ordinal);
        });
    }

    [Theory]
    [InlineData("captures", "capture_id")]
    [InlineData("curves", "capture_id || '/' || channel")]
    [InlineData("capture_events", "capture_id || '/' || event")]
    [InlineData("links", "capture_id")]
    [InlineData("clocks", "session || '/' || source || '/' || device")]
    [InlineData("measures", "swing_id")]
    [InlineData("swing_events", "swing_id || '/' || event")]
    [InlineData("swing_curves", "swing_id || '/' || channel")]
    [InlineData("curve_measures", "swing_id || '/' || variable")]
    [InlineData("flags", "swing_id || '/' || coalesce(capture_id, '') || '/' || coalesce(variable, '') || '/' || rule")]
    [InlineData("swings", "swing_id")]
    [InlineData("noise", "participant || '/' || outcome")]
    [InlineData("effects", "participant || '/' || outcome || '/' || contrast || '/' || measure")]
    [InlineData("trends", "participant || '/' || outcome || '/' || contrast || '/' || term")]
    [InlineData("curve_means", "participant || '/' || channel || '/' || phase")]
    [InlineData("curve_tests", "participant || '/' || channel || '/' || contrast || '/' || measure")]
    [InlineData("reliability", "outcome || '/' || level || '/' || coefficient")]
    [InlineData("agreement", "outcome || '/' || source_a || '/' || source_b")]
    [InlineData("group_effects", "outcome || '/' || contrast || '/' || measure")]
    [InlineData("findings", "scope || '/' || coalesce(participant, '') || '/' || outcome || '/' || contrast")]
    public void ARowOfAnyTableIsTracedToOriginals(string table, string key)
    {
        var row = Rows($"SELECT {key} FROM {table} ORDER BY 1 LIMIT 1")[0][0].GetString()!;
        var origins = Origins(Trace(table, row, "--depth", "20")).ToList();
        Assert.NotEmpty(origins);
        Assert.All(origins, origin => Assert.True(origin.GetProperty("raw").GetString()!.Length > 0 || origin.GetProperty("absent").GetString()!.StartsWith("a binary recording", StringComparison.Ordinal), origin.ToString()));
    }

    [Fact]
    public void AnEffectIsTracedToExactlyTheSwingsItCounts()
    {
        var counts = Rows("SELECT n_from + n_to FROM effects WHERE participant = 'P01' AND outcome = 'club_head_speed' AND contrast = 'with-cue' AND measure = 'difference'")[0][0];
        var traced = Trace("effects", "P01/club_head_speed/with-cue/difference", "--depth", "1").GetProperty("from");
        Assert.Equal(counts.GetInt64(), traced.GetArrayLength());
    }

    [Fact]
    public void ATraceOfWhatIsNotThereSaysWhatARowIsCalled()
    {
        var problem = Swingstudy.RunIn(demo.Folder, "audit", "trace", "agreement", "nothing", "--json").Expect(3).Json.GetProperty("problems")[0];
        Assert.Equal("row-unknown", problem.GetProperty("code").GetString());
        Assert.Equal("outcome/source_a/source_b", problem.GetProperty("expected").GetString());
        Assert.Equal("table-unknown", Swingstudy.RunIn(demo.Folder, "audit", "trace", "nothing", "nothing", "--json").Expect(3).Json.GetProperty("problems")[0].GetProperty("code").GetString());
        Assert.Equal("column-unknown", Swingstudy.RunIn(demo.Folder, "audit", "trace", "noise", "P01/club_head_speed", "nothing", "--json").Expect(3).Json.GetProperty("problems")[0].GetProperty("code").GetString());
    }

    [Fact]
    public void ADecisionIsFollowedAndUndoneByANewOne()
    {
        var swing = Rows("SELECT swing_id FROM swings WHERE included ORDER BY swing_id LIMIT 1")[0][0].GetString()!;
        Swingstudy.RunIn(demo.Folder, "decide", "exclude", swing, "--reason", "a ball rolled under the foot").Expect(0);
        Swingstudy.RunIn(demo.Folder, "run").Expect(0);
        Assert.False(Rows($"SELECT included FROM swings WHERE swing_id = '{swing}'")[0][0].GetBoolean());
        Swingstudy.RunIn(demo.Folder, "decide", "include", swing, "--reason", "it was another swing").Expect(0);
        Swingstudy.RunIn(demo.Folder, "run").Expect(0);
        Assert.True(Rows($"SELECT included FROM swings WHERE swing_id = '{swing}'")[0][0].GetBoolean());
        Assert.True(Rows("SELECT count(*) FROM \"swings@0\"")[0][0].GetInt64() > 0);
        var log = Swingstudy.RunIn(demo.Folder, "audit", "log", "--json").Expect(0).Json.GetProperty("entries").EnumerateArray().Select(entry => entry.GetProperty("act").GetString());
        Assert.Contains("decide.exclude", log);
    }

    [Fact]
    public void AnExportDescribesEveryFileItHolds()
    {
        var folder = demo.NewPath("export");
        Swingstudy.RunIn(demo.Folder, "export", "--to", folder).Expect(0);
        using var package = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "datapackage.json")));
        var described = package.RootElement.GetProperty("resources").EnumerateArray().Select(resource => resource.GetProperty("path").GetString()!).Order().ToList();
        var written = Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(folder, file)).Where(file => file.Contains('/', StringComparison.Ordinal)).Order().ToList();
        Assert.Equal(written, described);
        Swingstudy.RunIn(demo.Folder, "export", "--to", folder).Expect(3);
    }

    [Fact]
    public void NoNameOfAPlayerStandsOutsideOriginalsAndIdentities()
    {
        var names = new[] { "Otter", "Badger", "Plover", "Grünfink" };
        foreach (var file in Directory.GetFiles(demo.Folder, "*", SearchOption.AllDirectories))
        {
            var relative = Path.GetRelativePath(demo.Folder, file);
            if (relative.StartsWith("originals", StringComparison.Ordinal) || relative.StartsWith("identities", StringComparison.Ordinal) || relative == "truth.json")
                continue;
            var text = File.ReadAllText(file);
            Assert.All(names, name => Assert.False(text.Contains(name, StringComparison.Ordinal), $"{relative} holds the name {name}."));
        }
    }

    private List<JsonElement> Rows(string sql) => [.. Swingstudy.RunIn(demo.Folder, "query", sql, "--json").Expect(0).Json.GetProperty("rows").EnumerateArray()];

    private JsonElement Trace(string table, string key, params string[] more) => Swingstudy.RunIn(demo.Folder, ["audit", "trace", table, key, .. more, "--json"]).Expect(0).Json;

    private static IEnumerable<JsonElement> Origins(JsonElement node)
    {
        var below = node.GetProperty("from").EnumerateArray().SelectMany(Origins);
        return node.GetProperty("origin") is { ValueKind: JsonValueKind.Object } origin ? below.Prepend(origin) : below;
    }
}
