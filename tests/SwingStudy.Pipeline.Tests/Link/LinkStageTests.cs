using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Tests.Link;

public sealed class LinkStageTests
{
    private static readonly double[] Times = [0, 31, 58, 97, 121, 160, 186, 231];

    private static readonly SessionRecord Session = new()
    {
        Id = "P01-20260907-1",
        Participant = new ParticipantId("P01"),
        StartedAt = Some.Morning,
        StartedLocal = new LocalDateTime(2026, 9, 7, 10, 0),
    };

    [Fact]
    public void ThePreferredSourceGivesTheSwingsNumberedByTime()
    {
        var links = Link([.. CaptureRow.At("strike", 60, 0, 30), .. CaptureRow.At("plates", 2, 33)]);
        Assert.Equal(("P01-20260907-1-01", "session"), Of(links, "strike-2"));
        Assert.Equal(("P01-20260907-1-02", "session"), Of(links, "strike-3"));
        Assert.Equal(("P01-20260907-1-03", "session"), Of(links, "strike-1"));
    }

    [Fact]
    public void AnotherDeviceIsMatchedAndItsFalseTriggersStayUnlinked()
    {
        var plates = Times.Where((_, i) => i != 3).Append(75).Order().Select(time => time + 12.4).ToArray();

        var links = Link([.. CaptureRow.At("strike", Times), .. CaptureRow.At("plates", plates)]);

        Assert.Equal(("P01-20260907-1-01", "time"), Of(links, "plates-1"));
        Assert.Equal((null, "missed-or-false"), Of(links, "plates-4"));
        Assert.Equal(("P01-20260907-1-05", "time"), Of(links, "plates-5"));
        Assert.Equal(("P01-20260907-1-08", "time"), Of(links, "plates-8"));
    }

    [Fact]
    public void AMatchThatFitsInMoreThanOneWayIsNotMade()
    {
        double[] even = [0, 30, 60, 90, 120, 150];
        var links = Link([.. CaptureRow.At("strike", even), .. CaptureRow.At("plates", even)]);
        Assert.Equal((null, "low-confidence"), Of(links, "plates-1"));
    }

    [Fact]
    public void TheNewestRevisionWinsAndTheOldOneStaysOnRecord()
    {
        CaptureRow[] old = [.. CaptureRow.At("strike", 0, 30)];
        CaptureRow[] mended = [.. old.Select(row => row with { Original = "again", RevisionOf = row.Id })];

        var links = Link([.. old, .. mended]);

        Assert.Equal((null, "replaced"), Of(links, "strike-1"));
        Assert.Equal(("P01-20260907-1-01", "session"), Of(links, "again-1"));
        Assert.Equal(4, links.Count);
    }

    [Fact]
    public void MomentsBelongToTheSwingWhoseWindowHoldsThem()
    {
        var links = Link([.. CaptureRow.At("strike", 10, 40), .. CaptureRow.At("band", 6.9, 7, 10, 10.1, 38)]);
        Assert.Equal((null, "outside-window"), Of(links, "band-1"));
        Assert.Equal(("P01-20260907-1-01", "window"), Of(links, "band-2"));
        Assert.Equal(("P01-20260907-1-01", "window"), Of(links, "band-3"));
        Assert.Equal((null, "outside-window"), Of(links, "band-4"));
        Assert.Equal(("P01-20260907-1-02", "window"), Of(links, "band-5"));
    }

    [Fact]
    public void APersonsMatchComesLastAndWins()
    {
        CaptureRow[] rows = [.. CaptureRow.At("strike", 0, 30), .. CaptureRow.At("plates", 7)];
        Assert.Equal((null, "low-confidence"), Of(Link(rows, Decide("""{"capture":"plates-1","swing":null}""")[..0]), "plates-1"));
        Assert.Equal(("P01-20260907-1-02", "decision"), Of(Link(rows, Decide("""{"capture":"plates-1","swing":"P01-20260907-1-02"}""")), "plates-1"));
        Assert.Equal((null, "low-confidence"), Of(Link(rows, Decide("""{"capture":"plates-1","swing":"P01-20260907-1-09"}""")), "plates-1"));
    }

    [Fact]
    public void CapturesOutsideSessionsSayWhy()
    {
        using var study = new TestStudy();
        study.Session("P01", 0, "baseline");
        study.Captures([
            new CaptureRow("strike", 1, Some.Morning - Duration.FromMinutes(16)), new CaptureRow("strike", 2, Some.Morning - Duration.FromMinutes(14)),
            new CaptureRow("strike", 3, Some.Morning + Duration.FromHours(13)), new CaptureRow("strike", 4, Some.Morning + Duration.FromHours(15)),
        ]);

        study.Run();

        var links = study.Rows("links");
        Assert.Equal((null, "no-session"), Of(links, "file-1"));
        Assert.Equal(("P01-20260907-1-01", "session"), Of(links, "file-2"));
        Assert.Equal(("P01-20260907-1-02", "session"), Of(links, "file-3"));
        // 15 hours after 10:00 local the next day has begun.
        Assert.Equal((null, "no-session"), Of(links, "file-4"));
    }

    [Fact]
    public void TheOrderOfCapturesInFilesDoesNotMatter()
    {
        var rows = Some.Captures([.. CaptureRow.At("strike", Times), .. CaptureRow.At("plates", [.. Times.Select(time => time + 3)]), .. CaptureRow.At("band", 1, 2, 3)]);
        var links = Body.Run("link", "links", [rows], Session).Text();
        for (var seed = 1; seed < 6; seed++)
            Assert.Equal(links, Body.Run("link", "links", [rows.Shuffled(seed)], Session).Text());
    }

    [Fact]
    public void EveryCaptureHasExactlyOneLink()
    {
        CaptureRow[] rows = [.. CaptureRow.At("strike", Times), .. CaptureRow.At("plates", 4, 500), .. CaptureRow.At("band", 1, 2, 300)];
        var links = Link(rows);
        Assert.Equal(rows.Select(row => row.Id).Order(), links.Texts("capture_id").Order());
    }

    private static RowSet Link(IEnumerable<CaptureRow> rows, Decision[]? decisions = null) =>
        Body.Run("link", "links", [Some.Captures(rows)], Session, decisions);

    private static Decision[] Decide(string subject) => [new Decision(1, "match", subject, "seen on video", "Coach", Some.Morning)];

    private static (string? Swing, string? Method) Of(RowSet links, string capture)
    {
        var row = Array.IndexOf(links.Texts("capture_id"), capture);
        return (links.Texts("swing_id")[row], links.Texts("method")[row]);
    }
}
