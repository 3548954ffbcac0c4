using SwingStudy.Domain.Protocols;
using SwingStudy.Pipeline.Draws;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Pipeline.Tests.Draws;

public sealed class RandomDrawTests
{
    private static readonly DrawRecord Record = new(1, 1, Some.Morning, "coach");

    [Theory]
    [InlineData(Randomization.PhaseStart)]
    [InlineData(Randomization.Order)]
    [InlineData(Randomization.OrderAndStart)]
    [InlineData(Randomization.PhaseChanges)]
    [InlineData(Randomization.Alternation)]
    public void WhatIsDrawnIsOneOfTheSetThatIsStored(string kind)
    {
        for (var seed = 1UL; seed <= 50; seed++)
        {
            foreach (var player in Make(kind, seed).Players)
            {
                var scheme = AssignmentSchemes.Of(player.Set);
                Assert.True(scheme.Admits(AssignmentSchemes.Flags(player)), player.Assignment);
                Assert.Contains(player.Assignment, player.Set.Listed!);
                Assert.Equal(scheme.Count, player.Set.Listed!.Distinct().Count());
                Assert.Equal(player.Set.Count, player.Set.Listed!.Count);
            }
        }
    }

    [Theory]
    [InlineData(Randomization.PhaseStart)]
    [InlineData(Randomization.PhaseChanges)]
    [InlineData(Randomization.Alternation)]
    public void TheProtocolsCountOfAssignmentsIsThatOfTheTest(string kind)
    {
        var player = Make(kind, 3).Players[0];
        double[] values = [.. Enumerable.Range(0, player.Set.Sessions).Select(i => Math.Sin(i) + (player.Assignment[i] == '1' ? 100 : 0))];

        var test = RandomizationTest.Of(values, AssignmentSchemes.Flags(player), AssignmentSchemes.Of(player.Set));

        Assert.Equal(DrawPlan.Of(Protocol(kind, 3))!.Assignments, test.Assignments);
        Assert.Equal(DrawPlan.Of(Protocol(kind, 3))!.SmallestPossibleP, test.SmallestPossibleP);
    }

    [Theory]
    [InlineData(Randomization.Order, 6)]
    [InlineData(Randomization.OrderAndStart, 6 * 8)]
    public void AJointDrawFitsTheTestOfTheMultipleBaseline(string kind, int assignments)
    {
        var draw = Make(kind, 5);
        var series = draw.Players.Select(player => player.Assignment.Select((flag, i) => Math.Sin(i) + (flag == '1' ? 100 : 0)).ToArray()).ToList();

        var test = MultipleBaselineTest.Of(series, [.. draw.Windows.Select(window => window.ToArray())], [.. draw.Players.Select(player => player.Start)], draw.OrderDrawn);

        Assert.Equal((assignments, assignments), (test.Assignments, draw.Assignments));
        Assert.Equal(draw.SmallestPossibleP, test.SmallestPossibleP);
        Assert.Equal([0, 1, 2], draw.Players.Select(player => player.Tier!.Value).Order());
    }

    [Fact]
    public void WhoeverDrawsAgainFromTheSeedGetsTheSame() =>
        Assert.Equivalent(Make(Randomization.Order, 7), Make(Randomization.Order, 7), strict: true);

    [Fact]
    public void APlayerWhoJoinsLaterChangesNothingForTheOthers()
    {
        var protocol = Protocol(Randomization.PhaseStart, 11);
        var plan = DrawPlan.Of(protocol)!;
        var alone = RandomDraw.Make(protocol, plan, ["P02"], Record).Players[0];
        var together = RandomDraw.Make(protocol, plan, ["P03", "P01", "P02"], Record);

        Assert.Equal(["P01", "P02", "P03"], together.Players.Select(player => player.Participant));
        Assert.Equal(alone.Assignment, together.Players[1].Assignment);
    }

    // 6,000 draws among 6 orders: chi-square with 5 degrees of freedom exceeds 20.5 in one of a thousand runs.
    [Fact]
    public void EveryOrderIsEquallyLikely()
    {
        var counts = Enumerable.Range(1, 6000).Select(seed => string.Join(',', Make(Randomization.Order, (ulong)seed).Players.Select(player => player.Tier)))
            .CountBy(order => order).Select(pair => pair.Value).ToList();

        Assert.Equal(6, counts.Count);
        Assert.True(counts.Sum(count => (count - 1000.0) * (count - 1000.0) / 1000) < 20.5, string.Join(' ', counts));
    }

    [Fact]
    public void TheCalendarHasTheDrawnPhasesThenTheFurtherOnes()
    {
        var player = Make(Randomization.PhaseStart, 1).Players[0];

        Assert.Equal(
            [.. Enumerable.Repeat("without", player.Start), .. Enumerable.Repeat("with", player.Set.Sessions - player.Start), "later", "later"],
            player.Phases);
        Assert.InRange(player.Start, 2, 4);
    }

    [Fact]
    public void DrawnChangesGiveEachPhaseOfAWithdrawalItsName()
    {
        var player = Make(Randomization.PhaseChanges, 2).Players[0];

        Assert.Equal(["without", "with", "without-again", "with-again"], player.Phases.SkipLast(2).Distinct());
        Assert.All(player.Phases.SkipLast(2).CountBy(phase => phase), phase => Assert.True(phase.Value >= 2));
    }

    [Fact]
    public void AlternatingConditionsNeverComeThreeTimesInARow()
    {
        var player = Make(Randomization.Alternation, 4).Players[0];

        Assert.DoesNotContain("000", player.Assignment, StringComparison.Ordinal);
        Assert.DoesNotContain("111", player.Assignment, StringComparison.Ordinal);
        Assert.Equal(player.Assignment.Select(flag => flag == '1' ? "with" : "without"), player.Phases.Take(8));
    }

    [Fact]
    public void ALargeSetIsToldByItsRuleAndNumber()
    {
        var protocol = Protocol(Randomization.Alternation, 1, least: 8);
        var player = RandomDraw.Make(protocol, DrawPlan.Of(protocol)!, ["P01"], Record).Players[0];

        Assert.Null(player.Set.Listed);
        Assert.True(player.Set.Count > AssignmentSet.MostListed);
        Assert.True(AssignmentSchemes.Of(player.Set).Admits(AssignmentSchemes.Flags(player)));
    }

    [Fact]
    public void AJointDrawOfAnotherNumberOfPlayersIsACallersMistake()
    {
        var protocol = Protocol(Randomization.Order, 1);

        Assert.Throws<ArgumentException>(() => RandomDraw.Make(protocol, DrawPlan.Of(protocol)!, ["P01", "P02"], Record));
    }

    private static Draw Make(string kind, ulong seed)
    {
        var protocol = Protocol(kind, seed);
        return RandomDraw.Make(protocol, DrawPlan.Of(protocol)!, ["P01", "P02", "P03"], Record);
    }

    private static Protocol Protocol(string kind, ulong seed, int? least = null)
    {
        var sessions = least ?? (kind == Randomization.Alternation ? 4 : 2);
        var turns = kind == Randomization.PhaseChanges ? new[] { "without", "with", "without-again", "with-again" } : ["without", "with"];
        return Some.Protocol with
        {
            Design = kind switch
            {
                Randomization.Order or Randomization.OrderAndStart => DesignKind.MultipleBaseline,
                Randomization.PhaseChanges => DesignKind.Withdrawal,
                Randomization.Alternation => DesignKind.Alternating,
                _ => DesignKind.PrePost,
            },
            Players = new(3, ""),
            Phases =
            [
                .. turns.Select((name, i) => new Phase(name, i % 2 == 0 ? PhaseRole.Baseline : PhaseRole.Intervention, sessions, 3, null, null, "")),
                new("later", PhaseRole.FollowUp, 2, 3, 14, null, ""),
            ],
            Randomization = new(kind, 3, kind == Randomization.OrderAndStart ? 4 : 5, seed) { Stagger = 2, Sessions = 12 },
        };
    }
}
