using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Pipeline.Safety;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Tests.Safety;

public sealed class SafetyWatchTests : IDisposable
{
    private readonly TestStudy _study = new(With(new StopRule(null, null, null, "Enough.") { MostSwings = 3 }, new StopRule("pain_nrs", 4, null, "It hurts.")));

    public void Dispose() => _study.Dispose();

    [Fact]
    public void WhatWasLookedAtIsNotReadAgain()
    {
        _study.Swings("P01", 0, "baseline", 40, 41, 42, 43);
        _study.Swings("P02", 0, "baseline", 40, 41);

        // The stop is not put on record here, so that only a player who is read again shows it again.
        Assert.Equal(["P01-20260907-1 4 swings in the session"], LookAndNote());
        Assert.Empty(LookAndNote());

        _study.Swings("P02", 1, "baseline", 40, 41, 42, 43, 44);
        Assert.Equal(["P02-20260908-1 5 swings in the session"], LookAndNote());
    }

    [Fact]
    public void WhatIsNotNotedIsLookedAtAgain()
    {
        _study.Swings("P01", 0, "baseline", 40, 41, 42, 43);

        Assert.Single(News(new SafetyWatch(_study.Setup, _study.Registry, _study.Tables)));
        Assert.Single(LookAndNote());
    }

    [Fact]
    public void NewSwingsOfAKnownSessionAreLookedAt()
    {
        var session = _study.Swings("P01", 0, "baseline", 40, 41, 42);
        Assert.Empty(LookAndNote());

        _study.Captures([new CaptureRow("strike", 1, session.StartedAt + Duration.FromMinutes(5)) { Original = "late" }]);

        Assert.Equal(["P01-20260907-1 4 swings in the session"], LookAndNote());
    }

    [Theory]
    [InlineData(SessionEntry.Ratings, 1)]
    [InlineData(SessionEntry.Note, 0)]
    public void ARatingIsLookedAtHoweverLittleElseIsNew(string kind, int stops)
    {
        var session = _study.Swings("P01", 0, "baseline", 40);
        Assert.Empty(LookAndNote());

        _study.Registry.Act("tester", "session.note", act =>
        {
            act.Add(new SessionEntry(0, session.Id, new ParticipantId("P01"), kind, session.StartedAt, "tester", """{"pain_nrs":6}"""));
            return "{}";
        });

        Assert.Equal(stops, LookAndNote().Length);
    }

    [Fact]
    public void OtherRulesAreHeldAgainstAll()
    {
        _study.Swings("P01", 0, "baseline", 40, 41);
        _study.Swings("P02", 0, "baseline", 40);
        Assert.Empty(LookAndNote());

        _study.Setup = _study.Setup with { Protocol = With(new StopRule(null, null, null, "Enough.") { MostSwings = 1 }) with { Hash = Sha256.Of("amended") } };

        Assert.Equal(["P01-20260907-1 2 swings in the session"], LookAndNote());
    }

    [Fact]
    public void AllAreCountedWhoeverIsNew()
    {
        _study.Swings("P01", 0, "baseline", 40, 41);
        _study.Swings("P02", 0, "baseline", 40);
        LookAndNote();

        Assert.Equal([new SwingCounts("P01", 1, 2, 0), new SwingCounts("P02", 1, 1, 0)], new SafetyWatch(_study.Setup, _study.Registry, _study.Tables).Counts());
    }

    private static Protocol With(params StopRule[] rules) => Some.Protocol with { StopRules = rules };

    private static string[] News(SafetyWatch watch) => [.. watch.News(Some.Morning).Select(stop => $"{stop.Session} {stop.Detail}")];

    private string[] LookAndNote()
    {
        var watch = new SafetyWatch(_study.Setup, _study.Registry, _study.Tables);
        var news = News(watch);
        watch.Done();
        return news;
    }
}
