using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;

namespace SwingStudy.Domain.Tests.Protocols;

public sealed class ProtocolHistoryTests
{
    private static readonly PlannedComparison Primary = new("club_head_speed", "with-cue", "baseline", "cue", "primary", 0.9);
    private static readonly PlannedComparison Secondary = new("ball_speed", "with-cue", "baseline", "cue", "secondary", null);
    private static readonly PhaseData Baseline = new("baseline", "baseline", 5, 60);
    private static readonly PhaseData Cue = new("cue", "intervention", 1, 12);

    [Fact]
    public void WithoutALockNothingIsPrespecified()
    {
        var standing = ProtocolHistory.None.StandingOf("club_head_speed", "with-cue");

        Assert.Equal((PlanTime.NotLocked, false), (standing.Time, standing.IsPrespecified));
    }

    [Fact]
    public void WhatIsLockedBeforeTheInterventionIsPrespecifiedAlthoughBaselineDataExist()
    {
        var standing = new ProtocolHistory([Version(1, [Baseline], Primary)]).StandingOf("club_head_speed", "with-cue");

        Assert.Equal((PlanTime.BeforeData, 1, true), (standing.Time, standing.Version, standing.IsPrespecified));
    }

    [Fact]
    public void WhatIsLockedAfterTheFirstInterventionSessionIsNot()
    {
        var standing = new ProtocolHistory([Version(1, [Baseline, Cue], Primary)]).StandingOf("club_head_speed", "with-cue");

        Assert.Equal((PlanTime.AfterData, 1), (standing.Time, standing.Version));
        Assert.Equal("locked on 2026-09-01, after data were taken (cue: 1 session, 12 swings)", standing.Sentence);
    }

    [Fact]
    public void AnOutcomeThatAnAmendmentAddsAfterDataIsToldApartFromThoseThatStoodBefore()
    {
        var history = new ProtocolHistory([Version(1, [], Primary), Version(2, [Baseline, Cue], Primary, Secondary)]);

        Assert.True(history.StandingOf("club_head_speed", "with-cue").IsPrespecified);
        var added = history.StandingOf("ball_speed", "with-cue");
        Assert.Equal((PlanTime.AfterData, 2, false), (added.Time, added.Version, added.WasChanged));
        Assert.Equal("added by amendment 1 on 2026-09-02, after data were taken (cue: 1 session, 12 swings)", added.Sentence);
        Assert.Equal([2], history.AmendmentsAfterData.Select(version => version.Number));
    }

    [Theory]
    [InlineData("primary", 0.5)]
    [InlineData("secondary", 0.9)]
    public void AComparisonWhoseRoleOrWorthwhileChangeIsMovedAfterDataIsChanged(string role, double worthwhile)
    {
        var history = new ProtocolHistory([Version(1, [], Primary), Version(2, [Cue], Primary with { Role = role, Worthwhile = worthwhile })]);

        var standing = history.StandingOf("club_head_speed", "with-cue");
        Assert.Equal((PlanTime.AfterData, 2, true), (standing.Time, standing.Version, standing.WasChanged));
    }

    [Fact]
    public void AnAmendmentBeforeDataLeavesAComparisonPlanned() => Assert.True(
        new ProtocolHistory([Version(1, [], Primary), Version(2, [Baseline], Primary, Secondary)]).StandingOf("ball_speed", "with-cue").IsPrespecified);

    [Fact]
    public void WhatIsTakenOutAndPutBackAfterDataCountsFromTheReturn()
    {
        var history = new ProtocolHistory([Version(1, [], Primary, Secondary), Version(2, [Cue], Primary), Version(3, [Cue], Primary, Secondary)]);

        Assert.Equal((PlanTime.AfterData, 3), (history.StandingOf("ball_speed", "with-cue").Time, history.StandingOf("ball_speed", "with-cue").Version));
    }

    [Fact]
    public void AComparisonThatTheProtocolDoesNotNameIsNotPlanned() =>
        Assert.Equal(PlanTime.NotPlanned, new ProtocolHistory([Version(1, [], Primary)]).StandingOf("launch_angle", "with-cue").Time);

    [Fact]
    public void SwingsWithoutAPhaseMayShowAnEffectAndCountAsSeen() =>
        Assert.True(Version(1, [new PhaseData("", "", 0, 3)], Primary).IsAfterData);

    private static ProtocolVersion Version(int number, PhaseData[] taken, params PlannedComparison[] comparisons) => new()
    {
        Number = number,
        Hash = Sha256.Of("text"),
        Version = "1.0.0",
        Text = "text",
        At = Instant.FromUtc(2026, 9, number, 8, 0),
        Actor = "coach",
        Reason = number == 1 ? null : "Reason.",
        Known = number == 1 ? null : "Nothing.",
        Taken = taken,
        Comparisons = comparisons,
    };
}
