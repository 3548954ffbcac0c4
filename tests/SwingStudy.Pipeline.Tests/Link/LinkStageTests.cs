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
    public void ADecisionThatNamesASwingByACaptureHoldsWhenNumbersShift()
    {
        CaptureRow[] rows = [.. CaptureRow.At("strike", 0, 30), .. CaptureRow.At("plates", 7)];
        var decision = Decide("""{"capture":"plates-1","swing":"P01-20260907-1-01","with":"strike-2"}""");
        Assert.Equal(("P01-20260907-1-02", "decision"), Of(Link(rows, decision), "plates-1"));
    }

    [Fact]
    public void TheSwingsComeFromAllDevicesAndTheTimeFromTheMostPreciseOne()
    {
        // Impact found in the recording is the best clock; the strike sensor cuts to seconds and misses the fourth swing, which two others saw.
        var precise = Times.Select((time, i) => time + 0.25 + (i * 0.013)).ToArray();
        CaptureRow[] rows =
        [
            .. CaptureRow.At("strike", [.. precise.Where((_, i) => i != 3).Select(Math.Floor)]),
            .. CaptureRow.At("plates", [.. precise.Select(time => time + 12.4)]),
            .. Markers(precise),
        ];

        var links = Link(rows);

        Assert.Equal(("P01-20260907-1-04", "time"), Of(links, "markers-4"));
        Assert.Equal(("P01-20260907-1-04", "time"), Of(links, "plates-4"));
        Assert.Equal(("P01-20260907-1-05", "session"), Of(links, "strike-4"));
        var clocks = Clocks(rows);
        Assert.All(clocks.Texts("reference_source"), source => Assert.Equal("markers", source));
        var plates = Array.IndexOf(clocks.Texts("source"), "plates");
        Assert.Equal(-12.4, clocks.Numbers("offset_s")[plates], 2);
        var strike = Array.IndexOf(clocks.Texts("source"), "strike");
        Assert.Equal((7L, 1L, 0L), (clocks.Integers("matched")[strike], clocks.Integers("missed")[strike], clocks.Integers("extra")[strike]));
    }

    [Fact]
    public void ARecordOfOneDeviceAloneIsASwingOnlyFromTheDeviceThatGivesTheSwings()
    {
        CaptureRow[] rows = [.. CaptureRow.At("strike", Times), .. CaptureRow.At("plates", [.. Times.Where((_, i) => i != 2).Append(75).Order().Select(time => time + 3.3)])];
        var links = Link(rows);
        Assert.Equal(("P01-20260907-1-03", "session"), Of(links, "strike-3"));
        Assert.Equal((null, "missed-or-false"), Of(links, "plates-3"));
    }

    [Fact]
    public void APracticeSwingWithoutImpactIsJoinedByItsUsualTimeAfterTheStart()
    {
        var precise = Times.Select((time, i) => time + 0.25 + (i * 0.013)).ToArray();
        var markers = Markers(precise).ToArray();
        markers[5] = markers[5] with { HasNoImpact = true };
        var links = Link([.. CaptureRow.At("strike", [.. precise.Select(Math.Floor)]), .. markers]);
        Assert.Equal(("P01-20260907-1-06", "time"), Of(links, "markers-6"));
    }

    [Fact]
    public void WhoNamesNobodyGoesToThePlayerOfTheSwing()
    {
        var other = Session with { Id = "P02-20260907-1", Participant = new ParticipantId("P02") };
        CaptureRow[] strike = [.. CaptureRow.At("strike", Times).Select((row, i) => row with { Participant = i % 3 == 0 ? "P02" : "P01" })];
        CaptureRow[] plates = [.. CaptureRow.At("plates", [.. Times.Select(time => time + 6.2)]).Select(row => row with { Participant = null })];

        var links = Body.RunDay("link", "links", [Some.Captures([.. strike, .. plates])], [Session, other]);

        Assert.Equal(("P02-20260907-1-01", "time"), Of(links, "plates-1"));
        Assert.Equal(("P01-20260907-1-01", "time"), Of(links, "plates-2"));
        Assert.Equal(("P02-20260907-1-02", "time"), Of(links, "plates-4"));
        Assert.Equal("P02", links.Texts("participant")[Array.IndexOf(links.Texts("capture_id"), "plates-4")]);
    }

    [Fact]
    public void ASwingThatOnlyNamelessDevicesSawWhilePlayersTookTurnsWaitsForAPerson()
    {
        var other = Session with { Id = "P02-20260907-1", Participant = new ParticipantId("P02") };
        CaptureRow[] strike = [.. CaptureRow.At("strike", [.. Times.Where((_, i) => i != 4)]).Select((row, i) => row with { Participant = i % 2 == 0 ? "P02" : "P01" })];
        var plates = CaptureRow.At("plates", [.. Times.Select(time => time + 6.2)]).Select(row => row with { Participant = null });
        var markers = Markers([.. Times.Select((time, i) => time + (i * 0.013))]).Select(row => row with { Participant = null });

        var links = Body.RunDay("link", "links", [Some.Captures([.. strike, .. plates, .. markers])], [Session, other]);

        Assert.Equal((null, "unknown-player"), Of(links, "plates-5"));
        Assert.Equal((null, "unknown-player"), Of(links, "markers-5"));
    }

    [Fact]
    public void EmptyPlatesBelongToEverySessionOfTheStayAndToNoSwing()
    {
        var other = Session with { Id = "P02-20260907-1", Participant = new ParticipantId("P02") };
        CaptureRow[] strike = [.. CaptureRow.At("strike", Times).Select((row, i) => row with { Participant = i % 2 == 0 ? "P02" : "P01" })];
        CaptureRow[] zero = [.. CaptureRow.At("zero", -60).Select(row => row with { Participant = null, Purpose = "zero", HasNoImpact = true })];

        var links = Body.RunDay("link", "links", [Some.Captures([.. strike, .. zero])], [Session, other]);

        int[] rows = [.. Enumerable.Range(0, links.Count).Where(row => links.Texts("method")[row] == "zero")];
        Assert.Equal(["P01-20260907-1", "P02-20260907-1"], rows.Select(row => links.Texts("session")[row]));
        Assert.All(rows, row => Assert.Null(links.Texts("swing_id")[row]));
    }

    [Fact]
    public void TwoStaysOfOneDayHaveClocksOfTheirOwn()
    {
        var later = Session with { Id = "P02-20260907-1", Participant = new ParticipantId("P02"), StartedAt = Some.Morning + Duration.FromMinutes(20) };
        CaptureRow[] rows =
        [
            .. CaptureRow.At("strike", Times), .. CaptureRow.At("plates", [.. Times.Select(time => time + 6.2)]).Select(row => row with { Participant = null }),
            .. CaptureRow.At("strike", [.. Times.Select(time => 1300 + (time * 1.1))]).Select(row => row with { Participant = "P02", Original = "later" }),
            .. CaptureRow.At("plates", [.. Times.Select(time => 1300 + (time * 1.1) - 2.7)]).Select(row => row with { Participant = null, Original = "later-plates" }),
        ];

        var links = Body.RunDay("link", "links", [Some.Captures(rows)], [Session, later]);

        Assert.Equal(("P01-20260907-1-08", "time"), Of(links, "plates-8"));
        Assert.Equal(("P02-20260907-1-01", "time"), Of(links, "later-plates-1"));
    }

    [Fact]
    public void WhatCouldNotBeJoinedNamesWhatItWouldJoin()
    {
        double[] even = [0, 30, 60, 90, 120, 150];
        var links = Link([.. CaptureRow.At("strike", even), .. CaptureRow.At("plates", even)]);
        var row = Array.IndexOf(links.Texts("capture_id"), "plates-2");
        Assert.Equal("strike-2", links.Texts("candidate")[row]);
        Assert.Equal("P01-20260907-1-02", Of(links, "strike-2").Swing);
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

    private static RowSet Clocks(IEnumerable<CaptureRow> rows) => Body.Run("link", "clocks", [Some.Captures(rows)], Session);

    /// <summary>Recordings in which impact was found: each starts a little less or more than 1.3 s before it.</summary>
    private static IEnumerable<CaptureRow> Markers(double[] impacts) => CaptureRow.At("markers", impacts)
        .Select((row, i) => row with { Recorded = row.Struck - Duration.FromMilliseconds(1280 + (i * 7)) });

    private static Decision[] Decide(string subject) => [new Decision(1, "match", subject, "seen on video", "Coach", Some.Morning)];

    private static (string? Swing, string? Method) Of(RowSet links, string capture)
    {
        var row = Array.IndexOf(links.Texts("capture_id"), capture);
        return (links.Texts("swing_id")[row], links.Texts("method")[row]);
    }
}
