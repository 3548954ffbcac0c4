using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.People;

/// <summary>Stop rules, adverse events and corrections of sessions, as a coach meets them.</summary>
public sealed class SessionSafetyTests
{
    private const string Session = "P01-20260504-1";

    [Fact]
    public void PainStopsTheSessionAndThePlayerUntilSomebodySaysWhyItGoesOn()
    {
        using var study = Started();
        study.Run("session", "note", Session, "--set", "pain_nrs=0", "--at", "2026-05-04 10:00").Expect(0);
        var stopped = study.Run("session", "note", Session, "--set", "pain_nrs=3", "--at", "2026-05-04 10:20", "--json").Expect(1).Json.GetProperty("stopped");
        Assert.Contains("rose from 0 to 3", stopped[0].GetProperty("detail").GetString()!, StringComparison.Ordinal);
        Assert.Contains($"session resume {Session}", stopped[0].GetProperty("mend").GetString()!, StringComparison.Ordinal);
        study.Run("status").Expect(1);
        study.Run("run").Expect(1);
        study.Run("session", "add", "P01", "--start", "2026-05-05 10:00", "--phase", "baseline").Expect(4);
        study.Run("session", "add", "P02", "--start", "2026-05-05 10:00", "--phase", "baseline").Expect(1);

        study.Run("session", "resume", Session, "--reason", " ").Expect(2);
        study.Run("session", "resume", Session, "--reason", "cleared by a licensed practitioner").Expect(0);
        study.Run("status").Expect(0);
        study.Run("session", "resume", Session, "--reason", "again").Expect(3);
        // The same evidence does not stop twice; worse does.
        study.Run("session", "note", Session, "fine now").Expect(0);
        study.Run("session", "note", Session, "--set", "pain_nrs=6", "--at", "2026-05-04 10:40").Expect(1);
        Assert.Contains("session.resume", study.Run("audit", "log", "--json").Output, StringComparison.Ordinal);
        study.Run("audit", "verify").Expect(0);
    }

    [Fact]
    public void WhatComesInIsHeldAgainstTheRulesAtOnce()
    {
        using var study = Started();
        study.Drop("bay/a.csv", SensorMapping.File(count: 5, first: 41) + string.Concat(Enumerable.Range(5, 5).Select(i => FormattableString.Invariant($"Ada Invented,2026-05-04 10:{i:00}:00,{i + 1},{36.1 + (0.01 * i)}\n"))));
        var ingested = study.Run("ingest", "--json").Expect(1).Json;
        Assert.Contains("fell from", ingested.GetProperty("stopped")[0].GetProperty("detail").GetString()!, StringComparison.Ordinal);
        Assert.Equal("taken", ingested.GetProperty("files")[0].GetProperty("outcome").GetString());
    }

    [Fact]
    public void AdverseEventsStandInTheReportAndSoDoesThatThereWereNone()
    {
        using var study = Started();
        study.Run("report").Expect(0);
        Assert.Contains("None on record, and nobody recorded that they asked.", Report(study), StringComparison.Ordinal);
        study.Run("session", "incident", Session, "--none").Expect(0);
        study.Run("session", "add", "P02", "--start", "2026-05-04 11:00", "--phase", "baseline", "--set", "pain_nrs=0").Expect(0);
        study.Run("report").Expect(0);
        Assert.Contains("None, asked 2 times.", Report(study), StringComparison.Ordinal);

        var number = study.Run("session", "incident", Session, "--what", "sore wrist", "--when", "2026-05-04 10:30", "--onset", "sudden, on the ninth swing", "--severity", "mild", "--expected", "no",
            "--related", "possible", "--action", "stopped swinging", "--told", "practitioner", "--follow-up", "call on Friday", "--json").Expect(0).Json.GetProperty("entry").GetInt64();
        study.Run("session", "incident", Session, "--follow-up-of", FormattableString.Invariant($"{number}"), "--outcome", "gone").Expect(0);
        study.Run("session", "incident", Session, "--follow-up-of", "999", "--outcome", "gone").Expect(3);
        study.Run("session", "incident", Session).Expect(2);
        var unjudged = study.Run("session", "incident", Session, "--what", "a cut", "--json").Expect(3).Json.GetProperty("problems")[0];
        Assert.Equal("incident-severity-missing", unjudged.GetProperty("code").GetString());
        study.Run("report").Expect(0);
        foreach (var words in new[] { "1 on record, asked 2 times.", "sore wrist", "ninth swing", "possible", "outcome gone" })
            Assert.Contains(words, Report(study), StringComparison.Ordinal);
        study.Run("session", "incident", Session, "--what", "a fall", "--severity", "severe").Expect(1);
    }

    [Fact]
    public void ACorrectedSessionKeepsItsEarlierForm()
    {
        using var study = Started();
        study.Run("session", "edit", Session, "--cue", "press earlier", "--set", "cue_fidelity=90", "--set", "warmup_kind=dynamic").Expect(0);
        var session = study.Run("session", "list", "--json").Expect(0).Json.GetProperty("sessions")[0];
        Assert.Equal(("press earlier", 2, 90.0), (session.GetProperty("cue").GetString(), session.GetProperty("revision").GetInt32(), session.GetProperty("variables").GetProperty("cue_fidelity").GetDouble()));
        study.Run("session", "edit", Session, "--set", "cue_fidelity=90").Expect(0);
        Assert.Equal(2, study.Run("session", "list", "--json").Json.GetProperty("sessions")[0].GetProperty("revision").GetInt32());
        study.Run("session", "edit", Session, "--set", "cue_fidelity=900").Expect(3);
        study.Run("session", "edit", Session, "--phase", "nonsense").Expect(3);
    }

    private static TestStudy Started()
    {
        var study = new TestStudy(SensorMapping.With());
        study.Run("session", "add", "P01", "--start", "2026-05-04 09:55", "--phase", "baseline", "--set", "warmup_swings=8").Expect(0);
        return study;
    }

    private static string Report(TestStudy study) => File.ReadAllText(study.PathOf("reports/study.html"));
}
