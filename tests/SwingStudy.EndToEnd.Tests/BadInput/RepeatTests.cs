using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.BadInput;

/// <summary>Exports that come again, corrected, overlapping or renumbered.</summary>
public sealed class RepeatTests
{
    [Fact]
    public void TheSameBytesUnderAnotherNameAreAlreadyHad()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/a.csv", SensorMapping.File());
        study.Ingest();
        var before = study.Tables();
        study.Drop("bay/copy of a.csv", SensorMapping.File());
        study.Ingest().Became("bay/copy of a.csv", "duplicate");
        Assert.Equal(before, study.Tables());
    }

    [Fact]
    public void AFileThatAPersonNamedIsKnownByItsNameAlone()
    {
        using var study = new TestStudy(SensorMapping.With());
        var folder = Directory.CreateDirectory(Path.Combine(Path.GetDirectoryName(study.Root)!, "home of Quilliam Zebedee")).FullName;
        File.WriteAllText(Path.Combine(folder, "a.csv"), SensorMapping.File());
        File.WriteAllText(Path.Combine(folder, "b.csv"), SensorMapping.File(day: "2026-05-05").Replace("Ada Invented", "Nobody Known", StringComparison.Ordinal));
        study.Ingest(1, Path.Combine(folder, "a.csv"), Path.Combine(folder, "b.csv")).Became("a.csv", "taken");
        study.Run("ingest", Path.Combine(folder, "a.csv")).Expect(1);
        foreach (var file in Directory.EnumerateFiles(study.Root, "*", SearchOption.AllDirectories))
            Assert.DoesNotContain("Quilliam", System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(file)), StringComparison.Ordinal);
    }

    [Fact]
    public void TheSameInboxTwiceChangesNoTable()
    {
        using var study = new TestStudy(SensorMapping.With());
        string[] names = ["bay/a.csv", "bay/b.csv"];
        void DropBoth()
        {
            study.Drop(names[0], SensorMapping.File() + "Ada Invented,2026-05-04 11:00:00,9,fast\n");
            study.Drop(names[1], SensorMapping.File(day: "2026-05-05"));
        }

        DropBoth();
        study.Ingest();
        var before = study.Tables();
        DropBoth();
        var again = study.Ingest();
        Assert.All(names, name => again.Became(name, "duplicate"));
        Assert.Equal(before, study.Tables());
        Assert.Empty(Directory.EnumerateFiles(study.PathOf("inbox"), "*", SearchOption.AllDirectories));
        study.Run("audit", "verify").Expect(0);
    }

    [Fact]
    public void ACorrectedExportReplacesItsRowsAndShowsTheDifference()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/a.csv", SensorMapping.File());
        study.Ingest();
        study.Drop("bay/a corrected.csv", SensorMapping.File().Replace("41.25", "42.75", StringComparison.Ordinal));
        var revision = Assert.Single(study.Ingest().Became("bay/a corrected.csv", "taken").GetProperty("revisions").EnumerateArray());
        Assert.Equal(("club_head_speed", "41.25", "42.75"), (revision.GetProperty("variable").GetString(), revision.GetProperty("before").GetString(), revision.GetProperty("after").GetString()));
        Assert.Equal(4, study.Query("SELECT 1 FROM captures").Count);
        Assert.Equal(42.75, Assert.Single(study.Query("SELECT club_head_speed FROM captures WHERE revision_of IS NOT NULL"))[0].GetDouble());
    }

    [Fact]
    public void AnOverlapThatAgreesIsNotTakenTwice()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/1.csv", SensorMapping.File(6));
        study.Drop("bay/2.csv", SensorMapping.File(6, from: 4));
        var file = study.Ingest().Counted("bay/2.csv", taken: 4, notData: 3);
        Assert.Equal(2, file.GetProperty("not_data").GetProperty("repeat").GetInt32());
        Assert.Equal(10, study.Query("SELECT 1 FROM captures").Count);
    }

    [Fact]
    public void AnOverlapThatDiffersIsHeldUntilAPersonTakesIt()
    {
        using var study = new TestStudy(SensorMapping.With());
        var second = SensorMapping.File(6, from: 4).Replace("42.25", "43.50", StringComparison.Ordinal);
        study.Drop("bay/1.csv", SensorMapping.File(6));
        study.Drop("bay/2.csv", second);
        var intake = study.Ingest(1);
        var problem = intake.Problem("bay/2.csv", "overlap-differs");
        Assert.Contains("43.5", problem.GetProperty("found").GetString()!, StringComparison.Ordinal);
        Assert.Equal(6, study.Query("SELECT 1 FROM captures").Count);
        Assert.True(study.Keeps(System.Text.Encoding.UTF8.GetBytes(second)));

        study.Run("decide", "file", intake.File("bay/2.csv").GetProperty("sha256").GetString()!, "--take", "--reason", "The second export is right.").Expect(0);
        study.Ingest().Became("bay/2.csv", "taken");
    }

    [Fact]
    public void AHeldFileThatAPersonLeavesOutStaysStoredAndIsNoLongerHeld()
    {
        using var study = new TestStudy(SensorMapping.With());
        var content = SensorMapping.File().Replace("Ada Invented", "Nobody Known", StringComparison.Ordinal);
        study.Drop("bay/a.csv", content);
        var intake = study.Ingest(1);
        Assert.Contains("people add", intake.Problem("bay/a.csv", "alias-unknown").GetProperty("mend").GetString()!, StringComparison.Ordinal);
        study.Run("status").Expect(1);
        study.Run("decide", "file", intake.File("bay/a.csv").GetProperty("sha256").GetString()!, "--leave", "--reason", "A guest.").Expect(0);
        study.Ingest().Became("bay/a.csv", "left-out");
        study.Run("status").Expect(0);
        Assert.True(study.Keeps(System.Text.Encoding.UTF8.GetBytes(content)));
    }

    [Fact]
    public void NumbersThatRestartAreReportedAndEveryRowIsTaken()
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/a.csv", SensorMapping.File() + "Ada Invented,2026-05-04 11:00:00,1,41\nAda Invented,2026-05-04 11:01:00,2,41\n");
        var intake = study.Ingest();
        intake.Counted("bay/a.csv", taken: 5);
        Assert.Equal(5, intake.Remark("bay/a.csv", "sequence-restarted").GetProperty("row").GetInt32());
    }
}
