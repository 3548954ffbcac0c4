using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Analyse;

/// <summary>What chance decided is tested against exactly the set that it chose from, and only when it was carried out.</summary>
public sealed class DrawTests
{
    // Six sessions, three of them before the cue; it could have started after 2, 3 or 4. By hand the differences of means are 2.25, 3 and 2.25: p = 1/3.
    private static readonly PlayedSwing[] Played = [.. Players.Of("P01", [40, 40, 40], [43, 43, 43])];

    [Fact]
    public void APlayersDrawIsTestedOverAllStartsThatCouldHaveBeenDrawn()
    {
        var tables = Analysis.Of(Played, Setup(Alone("000111")));
        var trends = tables["trends"];
        var row = Enumerable.Range(0, trends.Count).Single(i => trends.Texts("term")[i] == "randomization-test" && trends.Texts("outcome")[i] == "club_head_speed");
        Assert.Equal(3, trends.Numbers("estimate")[row], 9);
        Assert.Equal(1 / 3.0, trends.Numbers("p")[row], 9);
        Assert.Equal("with-cue", trends.Texts("contrast")[row]);
        var reasons = Reasons(tables["findings"], "P01");
        Assert.Contains("randomization-test: p = 0.333, all 3 assignments that could have been drawn; smallest possible p 0.3333", reasons, StringComparison.Ordinal);
        Assert.DoesNotContain("not-randomized", reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void SessionsThatWereNotCarriedOutAsDrawnAreNotTested()
    {
        var reasons = Reasons(Analysis.Of(Played, Setup(Alone("001111")))["findings"], "P01");
        Assert.Contains("drawn 001111, carried out 000111", reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutADrawItSaysNotRandomized() =>
        Assert.Contains("not-randomized: not randomized: nobody drew by lot", Reasons(Analysis.Of(Played)["findings"], "P01"), StringComparison.Ordinal);

    [Fact]
    public void PlayersDrawnTogetherAreTestedTogether()
    {
        PlayedSwing[] swings = [.. Players.Of("P01", [40, 40], [43, 43, 43, 43]), .. Players.Of("P02", [41, 41, 41], [44, 44, 44]), .. Players.Of("P03", [42, 42, 42, 42], [45, 45])];
        var draw = new Draw
        {
            Number = 1, ProtocolVersion = 1, Kind = "order", Seed = 1, IsJoint = true, OrderDrawn = true, Windows = [[2], [3], [4]], Assignments = 6, At = Some.Morning, Actor = "tester",
            Players = [Drawn("P01", "001111", 0), Drawn("P02", "000111", 1), Drawn("P03", "000011", 2)],
        };
        var tables = Analysis.Of(swings, Setup(draw));
        var group = tables["group_effects"];
        var row = Enumerable.Range(0, group.Count).Single(i => group.Texts("measure")[i] == "randomization-test" && group.Texts("outcome")[i] == "club_head_speed");
        // Each player jumps by 3 exactly at the own start; of the 3! = 6 orders only the one carried out puts all starts at the jumps: p = 1/6.
        Assert.Equal(3, group.Numbers("estimate")[row], 9);
        Assert.Equal(1 / 6.0, group.Numbers("p")[row], 9);
        Assert.Contains("the players were drawn together", Reasons(tables["findings"], "P02"), StringComparison.Ordinal);
        var findings = tables["findings"];
        var study = Enumerable.Range(0, findings.Count).Single(i => findings.Texts("scope")[i] == "study" && findings.Texts("contrast")[i] == "with-cue");
        Assert.StartsWith("randomization-test: p = 0.167 over the players drawn together, all 6 assignments", findings.Texts("reasons")[study], StringComparison.Ordinal);
    }

    [Fact]
    public void ADrawOfWhichAPlayerWasErasedTestsNobodyAndSaysWhy()
    {
        PlayedSwing[] swings = [.. Players.Of("P01", [40, 40], [43, 43, 43, 43]), .. Players.Of("P03", [42, 42, 42, 42], [45, 45])];
        var draw = new Draw
        {
            Number = 1, ProtocolVersion = 1, Kind = "order", Seed = 1, IsJoint = true, OrderDrawn = true, Windows = [[2], [3], [4]], Assignments = 6, At = Some.Morning, Actor = "tester",
            Players = [Drawn("P01", "001111", 0), Drawn("P03", "000011", 2)],
        };
        var group = Analysis.Of(swings, Setup(draw))["group_effects"];
        var row = Enumerable.Range(0, group.Count).Single(i => group.Texts("measure")[i] == "randomization-test" && group.Texts("outcome")[i] == "club_head_speed");
        Assert.True(double.IsNaN(group.Numbers("estimate")[row]) && double.IsNaN(group.Numbers("p")[row]));
        Assert.Contains("a player of this draw was erased", group.Texts("undefined")[row], StringComparison.Ordinal);
    }

    [Fact]
    public void ADrawOfAllPlayersCannotTestWhatWasMeasuredInSome()
    {
        PlayedSwing[] swings = [.. Players.Of("P01", [40, 40], [43, 43, 43]), .. Players.Of("P02", [41, 41, 41], [44, 44]), .. Players.Of("P03", [60, 60], [60, 60, 60], variable: "ball_speed")];
        var draw = new Draw
        {
            Number = 1, ProtocolVersion = 1, Kind = "phase-start", Seed = 1, IsJoint = true, OrderDrawn = false, Windows = [[2, 3], [2, 3], [2, 3]], Assignments = 8, At = Some.Morning, Actor = "tester",
            Players = [Drawn("P01", "00111", 0), Drawn("P02", "00011", 1), Drawn("P03", "00111", 2)],
        };
        var findings = Analysis.Of(swings, Setup(draw))["findings"];
        var study = Enumerable.Range(0, findings.Count).Single(i =>
            findings.Texts("scope")[i] == "study" && findings.Texts("outcome")[i] == "club_head_speed" && findings.Texts("contrast")[i] == "with-cue");
        Assert.StartsWith("randomization-test: the players were drawn together, and P03 has no session with a value", findings.Texts("reasons")[study], StringComparison.Ordinal);
    }

    [Fact]
    public void AFarPOfATestThatCouldHaveBeenSmallForbidsSupportAndASmallOneSpeaksAgainstATrend()
    {
        // Twenty-four sessions; the cue could have come after 2 to 21 of them. The jump comes with the cue, or six sessions before it.
        double Mean(int session, int jump) => (session >= jump ? 43 : 40) + (0.1 * (session % 3));
        PlayedSwing[] Played(int start, int jump) => [.. Players.Of("P01",
            [.. Enumerable.Range(0, start).Select(session => Mean(session, jump))], [.. Enumerable.Range(start, 24 - start).Select(session => Mean(session, jump))])];
        Draw draw = Alone(new string('0', 12) + new string('1', 12)) with { Assignments = 20 };
        draw = draw with { Players = [draw.Players[0] with { Set = draw.Players[0].Set with { Starts = [.. Enumerable.Range(2, 20)], Count = 20 } }] };

        var late = Analysis.Of(Played(12, 6), Setup(draw))["findings"];
        Assert.Equal("suggestive", late.Texts("verdict")[Row(late, "P01")]);
        Assert.Contains("randomization-test-unconvinced: chance decided when the cue came, and its test, which could have given a p of 0.05", Reasons(late, "P01"), StringComparison.Ordinal);

        var kept = Analysis.Of(Played(12, 12), Setup(draw))["findings"];
        Assert.Equal("supported", kept.Texts("verdict")[Row(kept, "P01")]);
        Assert.Contains("randomization-test: p = 0.050", Reasons(kept, "P01"), StringComparison.Ordinal);
    }

    [Fact]
    public void WhatWasPlannedOnlyAfterDataCanSuggestAndNotSupport()
    {
        PlayedSwing[] clear = [.. Players.Of("P01", [40, 40.1, 39.9], [43, 43.1, 42.9])];
        var version = new ProtocolVersion
        {
            Number = 1, At = Some.Morning, Actor = "tester", Hash = Some.Protocol.Hash, Version = "1.0.0", Text = "",
            Taken = [new PhaseData("cue", "intervention", 1, 12)], Comparisons = PlannedComparison.Of(Some.Protocol),
        };
        var findings = Analysis.Of(clear, Body.Setup with { History = new ProtocolHistory([version]) })["findings"];
        var row = Row(findings, "P01");
        Assert.Equal(("amended", "suggestive"), (findings.Texts("basis")[row], findings.Texts("verdict")[row]));
        Assert.Contains("amended: the comparison was locked on", findings.Texts("reasons")[row], StringComparison.Ordinal);
        var before = Analysis.Of(clear, Body.Setup with { History = new ProtocolHistory([version with { Taken = [] }]) })["findings"];
        Assert.Equal(("planned", "supported"), (before.Texts("basis")[Row(before, "P01")], before.Texts("verdict")[Row(before, "P01")]));
        Assert.DoesNotContain("not-locked", Reasons(before, "P01"), StringComparison.Ordinal);
    }

    [Fact]
    public void TheDesignStandardIsNamedWithItsEdition()
    {
        var reasons = Reasons(Analysis.Of(Played)["findings"], "P01");
        Assert.Contains($"design-standard: {Some.Protocol.Standard.Title}, edition of {Some.Protocol.Standard.Year}: not met (a change from baseline to intervention is one demonstration", reasons, StringComparison.Ordinal);
        Assert.Contains("a point is one session, however many swings it holds", reasons, StringComparison.Ordinal);
    }

    private static StudySetup Setup(Draw draw) => Body.Setup with { Schedule = new Schedule([draw]) };

    private static Draw Alone(string assignment) => new()
    {
        Number = 1, ProtocolVersion = 1, Kind = "phase-start", Seed = 1, IsJoint = false, Assignments = 3, At = Some.Morning, Actor = "tester", Players = [Drawn("P01", assignment, null)],
    };

    private static DrawnPlayer Drawn(string participant, string assignment, int? tier) => new()
    {
        Participant = participant, Assignment = assignment, Tier = tier, Phases = [],
        Set = new AssignmentSet { Kind = "phase-start", Sessions = assignment.Length, Starts = tier is { } own ? [own + 2] : [2, 3, 4], Count = 3 },
    };

    private static string Reasons(RowSet findings, string participant) => findings.Texts("reasons")[Row(findings, participant)]!;

    private static int Row(RowSet findings, string participant) => Enumerable.Range(0, findings.Count).Single(i =>
        findings.Texts("participant")[i] == participant && findings.Texts("outcome")[i] == "club_head_speed" && findings.Texts("contrast")[i] == "with-cue");
}
