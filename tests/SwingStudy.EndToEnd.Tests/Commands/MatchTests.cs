using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.Commands;

/// <summary>A person says which swing a record belongs to: it goes into the ledger, and the next run follows it.</summary>
public sealed class MatchTests : IDisposable
{
    private readonly TestStudy _study = new(SensorMapping.With(), SensorMapping.With(speed: "{ column: Speed, unit: m/s }", source: "gate"));

    public MatchTests()
    {
        _study.Run("session", "add", "P01", "--start", "2026-05-04 09:55", "--phase", "baseline").Expect(0);
        _study.Drop("bay/a.csv", SensorMapping.File(8));
        // The gate sees the same swings, all a minute apart, and something half an hour later, when nobody swung.
        _study.Drop("gate/a.csv", SensorMapping.File(8) + "Ada Invented,2026-05-04 10:35:20,9,12.00\n");
        _study.Ingest();
        _study.Run("run").Expect(0);
    }

    public void Dispose() => _study.Dispose();

    [Fact]
    public void ARecordGoesToTheSwingThatAPersonNamesAndLeavesItAgain()
    {
        var (capture, swing) = (Gate("swing_id IS NULL"), Swing());

        var decided = _study.Run("decide", "match", capture, swing, "--reason", "Seen on video.").Expect(0);
        Assert.Contains("match", decided.Output, StringComparison.Ordinal);
        Assert.Contains("swingstudy run", decided.Output, StringComparison.Ordinal);
        _study.Run("run").Expect(0);
        Assert.Equal((swing, "decision"), Link(capture));

        _study.Run("decide", "match", capture, "none", "--reason", "It was the wind.").Expect(0);
        _study.Run("run").Expect(0);
        Assert.Equal((null, "decision"), Link(capture));
        Assert.Equal(2, _study.Run("audit", "log", "--json").Expect(0).Json.GetProperty("entries").EnumerateArray().Count(entry => entry.GetProperty("act").GetString() == "decide.match"));
    }

    [Fact]
    public void WhatCannotBeDecidedIsRefusedAndNotRecorded()
    {
        var (capture, swing) = (Gate("swing_id IS NULL"), Swing());
        var skeleton = _study.Query("SELECT capture_id FROM links WHERE method = 'session' ORDER BY capture_id LIMIT 1")[0][0].GetString()!;
        var before = _study.Run("audit", "log", "--json").Output;

        Refused(3, "capture-unknown", "nobody-7", swing, "Seen.");
        Refused(3, "capture-is-swing", skeleton, swing, "Seen.");
        Refused(3, "swing-unknown", capture, "P01-20260504-1-99", "Seen.");
        Refused(2, "reason-missing", capture, swing, " ");
        Assert.Equal(before, _study.Run("audit", "log", "--json").Output);
    }

    [Fact]
    public void StatusSaysInWordsWhatWaitsAndWithWhichCommandItIsDecided()
    {
        var (capture, text) = (Gate("swing_id IS NULL"), _study.Run("status").Expect(1).Output);

        // Swings a minute apart fit the other device's rows in more than one way.
        Assert.Contains("In no swing: 9 records, fits in more than one way: a person has to decide", text, StringComparison.Ordinal);
        Assert.Contains($"To decide: {capture}: fits in more than one way: a person has to decide", text, StringComparison.Ordinal);
        Assert.Contains($"'swingstudy decide match {capture} ", text, StringComparison.Ordinal);
        Assert.Contains("could not be told: best offset", text, StringComparison.Ordinal);
        Assert.Contains("2 players, 1 session\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("low-confidence", text, StringComparison.Ordinal);
        Assert.Equal("low-confidence", _study.Run("status", "--json").Json.GetProperty("unlinked")[0].GetProperty("method").GetString());
    }

    private void Refused(int exit, string code, string capture, string swing, string reason) =>
        Assert.Equal(code, _study.Run("decide", "match", capture, swing, "--reason", reason, "--json").Expect(exit).Json.GetProperty("problems")[0].GetProperty("code").GetString());

    private string Gate(string which) => _study.Query($"SELECT c.capture_id FROM captures c JOIN links l ON l.capture_id = c.capture_id WHERE c.source = 'gate' AND l.{which} ORDER BY c.capture_id LIMIT 1")[0][0].GetString()!;

    private string Swing() => _study.Query("SELECT swing_id FROM swings ORDER BY swing_id LIMIT 1")[0][0].GetString()!;

    private (string? Swing, string? Method) Link(string capture)
    {
        var row = _study.Query($"SELECT swing_id, method FROM links WHERE capture_id = '{capture}'")[0];
        return (row[0].GetString(), row[1].GetString());
    }
}
