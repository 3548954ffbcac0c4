using SwingStudy.Ingestion.Intake;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Intake;

public sealed class SourceTrialTests
{
    [Fact]
    public void ATrialShowsRowsAsReadAndAsMappedAndStoresNothing()
    {
        using var study = new TestStudy(Some.Mapping);
        var path = study.Drop("bay/a.csv", "No;Player;When;Club speed\n1;Fern;07.09.2026 10:00:00;100\n2;Fern;07.09.2026 10:01:00;x\n");
        var before = Directory.GetFiles(study.Folder.Root, "*", SearchOption.AllDirectories).Order().ToList();
        var trial = SourceTrials.TrySource(path, [Some.Mapping], Some.Dictionary);
        Assert.Empty(trial.Problems);
        Assert.Equal(["1", "Fern", "07.09.2026 10:00:00", "100"], trial.RowsAsRead[0]);
        Assert.Equal(["line", "recorded_at", "participant", "sequence", "is_practice", "club_speed [m/s]"], trial.MappedColumns);
        Assert.Equal(["2", "2026-09-07T08:00:00.000Z", "Fern", "1", "false", "44.704"], trial.RowsAsMapped[0]);
        Assert.Equal((3, 2, 0), (trial.Counts.Read, trial.Counts.Taken, trial.Counts.Rejected));
        Assert.Equal(("x", "unparsable", 3), (trial.Rejects[0].Raw, trial.Rejects[0].Reason, trial.Rejects[0].Line));
        Assert.Equal(before, Directory.GetFiles(study.Folder.Root, "*", SearchOption.AllDirectories).Order());
    }

    [Fact]
    public void ATrialTellsWhyAFileWouldBeHeld()
    {
        using var study = new TestStudy(Some.Mapping);
        var path = study.Drop("bay/a.csv", "No;Player;When;Speed\n1;Fern;07.09.2026 10:00:00;100\n");
        Assert.NotEmpty(SourceTrials.TrySource(path, [Some.Mapping], Some.Dictionary).Problems);
        Assert.Equal("file-missing", Assert.Single(SourceTrials.TrySource(path + "x", [Some.Mapping], Some.Dictionary).Problems).Code);
    }
}
