using System.Text;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.Protocols;

/// <summary>Whatever a blind analyst asks for, no answer holds the name of a phase, a contrast or a cue.</summary>
public sealed class BlindTests(BlindStudy blind) : IClassFixture<BlindStudy>
{
    private readonly PlannedStudy _study = blind.Study;

    [Fact]
    public void NoTableShowsANameThroughQuery()
    {
        var tables = Tables();
        Assert.Contains("effects", tables);
        Assert.Contains("findings", tables);
        foreach (var table in tables)
        {
            Silent(_study.Run("query", $"SELECT * FROM {table}", "--json").Expect(0));
            Silent(_study.Run("query", $"SELECT * FROM \"{table}@0\"").Expect(0));
        }

        var codes = _study.Run("query", "SELECT DISTINCT phase FROM swings ORDER BY phase", "--json").Expect(0).Json.GetProperty("rows").EnumerateArray().Select(row => row[0].GetString()!).ToList();
        Assert.Equal(2, codes.Count);
        Assert.All(codes, code => Assert.Matches("^[A-Z]$", code));
        Assert.Empty(_study.Run("query", "SELECT * FROM swings WHERE phase = 'quiet-weeks'", "--json").Expect(0).Json.GetProperty("rows").EnumerateArray());
    }

    [Fact]
    public void NoFileOfAnExportShowsAName()
    {
        _study.Run("export", "--to", "out").Expect(0);

        var files = Directory.GetFiles(_study.PathOf("out"), "*", SearchOption.AllDirectories);
        Assert.Contains(files, file => file.EndsWith("swings.parquet", StringComparison.Ordinal));
        Assert.Contains(files, file => file.EndsWith("sessions.csv", StringComparison.Ordinal));
        Assert.All(files, file => Silent(Encoding.Latin1.GetString(File.ReadAllBytes(file)), file));
    }

    [Fact]
    public void NoOtherCommandShowsAName()
    {
        foreach (var command in new[] { "session|list", "audit|log", "audit|verify", "audit|trace|swings|P01-20260511-1-01|club_head_speed", "status", "people|list", "run" })
        {
            Silent(_study.Run(command.Split('|')).Expect(0));
            Silent(_study.Run([.. command.Split('|'), "--json"]).Expect(0));
        }
    }

    [Fact]
    public void WhatCannotBeMaskedIsRefused()
    {
        foreach (var command in new[]
        {
            "report|--player|P01", "audit|trace|effects|P01/club_head_speed/shove-effect/difference", "audit|trace|swings|P01-20260511-1-01|phase",
            "audit|trace|findings|study//club_head_speed/shove-effect", "audit|trace|trends|P01/club_head_speed/shove-effect/slope",
        })
        {
            var problem = _study.Refused(command.Split('|'));
            Assert.Equal("analyst-blind", problem.GetProperty("code").GetString());
            Assert.Contains("unblind", problem.GetProperty("mend").GetString()!, StringComparison.Ordinal);
        }

        Assert.False(File.Exists(_study.PathOf("reports/P01.html")));
    }

    [Fact]
    public void TheReportShowsSizesUnderCodesAndNoName()
    {
        var file = _study.Run("report", "--json").Expect(0).Json.GetProperty("file").GetString()!;
        Assert.Equal(_study.PathOf("reports/study-blind.html"), file);
        Assert.False(File.Exists(_study.PathOf("reports/study.html")));
        var page = File.ReadAllText(file);
        Silent(page, file);
        Assert.Matches("contrast-[A-Z]", page);
        Assert.Contains("P01", page, StringComparison.Ordinal);

        // The change of about 2 m/s is shown by its size alone.
        var size = _study.Run("query", "SELECT estimate FROM effects WHERE measure = 'difference' AND estimate IS NOT NULL", "--json").Expect(0).Json.GetProperty("rows")[0][0].GetDouble();
        Assert.Contains((size / 0.44704).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture), page, StringComparison.Ordinal);
    }

    [Fact]
    public void AnEffectHasNoDirection()
    {
        var size = _study.Run("query", "SELECT estimate, n_from FROM effects WHERE measure = 'difference' AND estimate IS NOT NULL", "--json").Expect(0).Json.GetProperty("rows")[0];

        Assert.True(size[0].GetDouble() > 0);
        Assert.Equal(System.Text.Json.JsonValueKind.Null, size[1].ValueKind);
    }

    private List<string> Tables() => [.. _study.Run("status", "--json").Json.GetProperty("tables").EnumerateArray().Select(table => table.GetProperty("name").GetString()!)];

    private static void Silent(Finished finished) => Silent(finished.Output + finished.Error, "an output");

    private static void Silent(string text, string where) =>
        Assert.All(PlannedStudy.Telling, name => Assert.False(text.Contains(name, StringComparison.Ordinal), $"'{name}' stands in {where}"));
}
