using SwingStudy.App.Studies;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.App.Tests.Studies;

public sealed class LinkReviewTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("review-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void AnOpenMatchTellsItsEvidenceAndTheCommandThatDecides()
    {
        var review = Review(
            [("capture_id", "gate-7"), ("participant", "P01"), ("method", "low-confidence"), ("session", "P01-20260504-1"), ("candidate", "bay-3"), ("residual_s", 1.25), ("confidence", 0.4)],
            [("capture_id", "bay-3"), ("swing_id", "P01-20260504-1-03"), ("participant", "P01"), ("method", "session"), ("session", "P01-20260504-1")]);

        var match = Assert.Single(review.Waiting);
        Assert.Equal(
            "gate-7: fits in more than one way: a person has to decide, nearest P01-20260504-1-03 (1.250 s), confidence 0.40: "
            + "'swingstudy decide match gate-7 P01-20260504-1-03 --reason ...', or none in place of the swing",
            match.Text);
        Assert.Equal(1, review.Unlinked["low-confidence"]);
    }

    [Fact]
    public void WithoutACandidateTheCommandNamesThePlaceOfTheSwing()
    {
        var review = Review([("capture_id", "gate-7"), ("participant", "P01"), ("method", "unknown-player")]);

        Assert.Equal("gate-7: nobody knows who swung: a person has to decide: 'swingstudy decide match gate-7 SWING --reason ...', or none in place of the swing", Assert.Single(review.Waiting).Text);
    }

    [Fact]
    public void RecordsOfASessionOrOfASwingWaitForNobody()
    {
        var review = Review(
            [("capture_id", "a"), ("participant", "P01"), ("method", "zero")],
            [("capture_id", "b"), ("participant", "P01"), ("method", "quiet")],
            [("capture_id", "c"), ("swing_id", "P01-1-01"), ("participant", "P01"), ("method", "time")],
            [("capture_id", "d"), ("participant", "P01"), ("method", "outside-window")]);

        Assert.Empty(review.Waiting);
        Assert.Equal(["outside-window"], review.Unlinked.Keys);
    }

    [Theory]
    [InlineData("fitted", 0, 0, false)]
    [InlineData("fitted", 1, 0, true)]
    [InlineData("fitted", 0, 2, true)]
    [InlineData("not-made", 0, 0, true)]
    public void AClockNeedsALookWhereItWasNotMadeOrRecordsDoNotAgree(string method, long missed, long extra, bool needsLook)
    {
        var clock = new ReviewedClock("P01-1", "speed-gate", "mat-gate", method, 2.5, 0.31, 9, missed, extra, -4, 8);

        Assert.Equal(needsLook, clock.NeedsLook);
        Assert.Equal(method != "not-made", clock.IsMade);
        if (method == "not-made")
            Assert.Equal("P01-1: the clock of mat-gate could not be told: best offset 2.500 s with confidence 0.31; 8 records fit -4.0 s beside it", clock.Text);
    }

    [Fact]
    public void ReasonsThatDifferInThePlayerAloneAreSaidOnce() => Assert.Equal(
        ["3 points in baseline of players 1 to 3; 5 meet the standard", "2 points in cue of players 1, 3; 5 meet the standard", "nothing is drawn"],
        StandardReasons.Grouped(
        [
            "3 points in baseline of player 1; 5 meet the standard", "2 points in cue of player 1; 5 meet the standard", "3 points in baseline of player 2; 5 meet the standard",
            "3 points in baseline of player 3; 5 meet the standard", "2 points in cue of player 3; 5 meet the standard", "nothing is drawn",
        ]));

    private LinkReview Review(params (string, object?)[][] links)
    {
        var store = new TableStore(new StudyFolder(_folder.FullName), TimeProvider.System);
        var rows = new RowSetBuilder(StudyTables.Links);
        foreach (var link in links)
            rows.Add(link);
        var table = store.Table(StudyTables.Links);
        using var file = table.NewFile("P01", "P01");
        file.Append(rows.Build());
        Assert.True(table.Commit(new TableChange { Adds = [file.Complete()], Info = new() { Stage = "test" } }).Succeeded(out _));
        return LinkReview.Of(store);
    }
}
