using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.Commands;

/// <summary>An intake that brings the stages up to date at once leaves what an intake and a run leave.</summary>
public sealed class IntakeAndRunTests
{
    [Fact]
    public void TablesAreThoseOfAnIntakeAndARun()
    {
        using var one = Ready();
        using var other = Ready();
        one.Ingest();
        one.Run("run").Expect(0);

        var report = other.Run("ingest", "--run", "--json").Expect(0).Json;

        Assert.Equal(one.Tables(), other.Tables());
        Assert.Equal(6, report.GetProperty("intake").GetProperty("rows_taken").GetInt32());
        var stages = report.GetProperty("run").GetProperty("stages").EnumerateArray().ToDictionary(stage => stage.GetProperty("stage").GetString()!, stage => stage.GetProperty("done").GetArrayLength());
        Assert.Equal(1, stages["link"]);
        Assert.Equal(1, stages["findings"]);
        Assert.Contains("up to date", other.Run("ingest", "--run").Expect(0).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsHeldDoesNotKeepTheRestFromBeingRun()
    {
        using var study = Ready();
        study.Drop("elsewhere/unknown.bin", "nothing that a mapping reads");

        var report = study.Run("ingest", "--run", "--json").Expect(1).Json;

        Assert.Contains(report.GetProperty("intake").GetProperty("files").EnumerateArray(), file => file.GetProperty("problems").GetArrayLength() > 0);
        Assert.Equal(6, study.Query("SELECT swing_id FROM swings").Count);
    }

    [Fact]
    public void AWatchingIntakeRunsAfterWhatItTook()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Run("session", "add", "P01", "--start", "2026-05-04 09:55", "--phase", "baseline").Expect(0);
        using var watching = Swingstudy.Start(study.Root, "ingest", "--watch", "--run");
        try
        {
            study.Drop("bay/04.csv", SensorMapping.File(6, "2026-05-04", 41));
            var log = study.PathOf("tables/findings/_delta_log/00000000000000000000.json");
            for (var waited = 0; !File.Exists(log); waited++)
            {
                Assert.False(watching.HasExited);
                Assert.True(waited < 3000, "Nothing was run within a minute.");
                Thread.Sleep(20);
            }
        }
        finally
        {
            watching.Kill();
            watching.WaitForExit();
        }

        Assert.Equal(6, study.Query("SELECT swing_id FROM swings").Count);
    }

    private static TestStudy Ready()
    {
        var study = new TestStudy(SensorMapping.With());
        study.Run("session", "add", "P01", "--start", "2026-05-04 09:55", "--phase", "baseline").Expect(0);
        study.Drop("bay/04.csv", SensorMapping.File(6, "2026-05-04", 41));
        return study;
    }
}
