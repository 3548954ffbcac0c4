using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tests.Declarations.Support;

namespace SwingStudy.Domain.Tests.Protocols;

public sealed class DrawPlanTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void AStartWithinAWindowLeavesTheLatestStartItsSessions()
    {
        var plan = Of("pre-post", "kind: phase-start, earliest_session: 6, latest_session: 25", players: 1)!;

        Assert.Equal((29, 20.0, false), (plan.Sessions, plan.Assignments, plan.IsJoint));
        Assert.Equal([.. Enumerable.Range(5, 20)], Assert.Single(plan.Windows));
    }

    [Fact]
    public void AnOrderOfPlayersStaggersTheirStarts()
    {
        var plan = Of("multiple-baseline", "kind: order, stagger: 3", players: 4)!;

        Assert.Equal((19, 24.0, true, true), (plan.Sessions, plan.Assignments, plan.IsJoint, plan.OrderDrawn));
        Assert.Equal([5, 8, 11, 14], plan.Windows.Select(window => Assert.Single(window)));
    }

    // Order times own starts: Koehler and Levin (1998), from memory: k! times the product of the windows.
    [Fact]
    public void OrderAndStartsMultiply()
    {
        var plan = Of("multiple-baseline", "kind: order-and-start, earliest_session: 6, latest_session: 8, stagger: 3", players: 3)!;

        Assert.Equal(6 * 27, plan.Assignments);
        Assert.Equal([[5, 6, 7], [8, 9, 10], [11, 12, 13]], plan.Windows);
    }

    // Onghena (1992), from memory: the spare sessions fall among the phases, 4 + 3 over 3 = 35.
    [Fact]
    public void AllChangesOfAWithdrawalAreDrawnAtOnce()
    {
        var plan = Of("withdrawal", "kind: phase-changes, sessions: 24", players: 1, phases: 4)!;

        Assert.Equal((24, 4, 5, 35.0), (plan.Sessions, plan.Phases, plan.Least, plan.Assignments));
    }

    [Fact]
    public void AnAlternationKeepsRunsAtTwo()
    {
        var plan = Of("alternating", "kind: alternation", players: 1)!;

        Assert.Equal((10, 5, 2, (double)Counted(10, 5, 2)), (plan.Sessions, plan.WithIntervention, plan.LongestRun, plan.Assignments));
        Assert.Equal(RandomizationSize.Alternation(5), RandomizationSize.Alternation(5, 5, 10));
    }

    [Theory]
    [InlineData(4, 6, 2)]
    [InlineData(6, 6, 3)]
    [InlineData(3, 8, 2)]
    public void OrdersWithShortRunsAreCountedRight(int without, int with, int longestRun) =>
        Assert.Equal(Counted(without + with, with, longestRun), RandomizationSize.Alternation(without, with, longestRun));

    [Theory]
    [InlineData("multiple-baseline", "kind: order, earliest_session: 3", 3, "draw-window")]
    [InlineData("pre-post", "kind: order", 3, "draw-design")]
    [InlineData("multiple-baseline", "kind: order-and-start", 3, "draw-window")]
    [InlineData("pre-post", "kind: phase-changes", 1, "draw-changes")]
    [InlineData("pre-post", "kind: phase-changes, sessions: 9", 1, "draw-changes")]
    [InlineData("alternating", "kind: alternation, longest_run: 1", 1, null)]
    public void ADrawThatDoesNotFitIsToldByItsCode(string design, string draw, int players, string? code)
    {
        var read = Read(design, draw, players, 2);

        Assert.Equal(code, read.Problems.Count == 0 ? null : Assert.Single(read.Problems).Code);
    }

    /// <summary>Counts by writing out every order, a way of its own.</summary>
    private static int Counted(int sessions, int with, int longestRun) => Enumerable.Range(0, 1 << sessions)
        .Select(bits => Convert.ToString(bits, 2).PadLeft(sessions, '0'))
        .Count(order => order.Count(flag => flag == '1') == with
            && !order.Contains(new string('0', longestRun + 1), StringComparison.Ordinal) && !order.Contains(new string('1', longestRun + 1), StringComparison.Ordinal));

    private DrawPlan? Of(string design, string draw, int players, int phases = 2)
    {
        var read = Read(design, draw, players, phases);
        Assert.True(read.Succeeded(out var protocol), string.Join('\n', read.Problems));
        return DrawPlan.Of(protocol);
    }

    private Domain.Problems.Outcome<Protocol> Read(string design, string draw, int players, int phases) => ProtocolReader.Read(_folder.Write("p.yaml", $$"""
        name: small
        version: 1.0.0
        title: Small
        question: Does it help?
        design: {{design}}
        phases:
        {{string.Join('\n', Enumerable.Range(1, phases).Select(i => $"  - {{ name: phase-{i}, role: {(i % 2 == 1 ? "baseline" : "intervention")}, minimum_sessions: 5, minimum_swings: 10, why: Reason. }}"))}}
        randomization: { {{draw}}, seed: 1, why: Reason. }
        fixed_conditions: [club, surface]
        players: { planned: {{players}}, why: Reason. }
        eligibility: { minimum_age: 18, age_of_majority: 18, why: Reason. }
        outcomes:
          - { variable: club_head_speed, role: primary, smallest_worthwhile: { amount: 2, unit: mph, basis: stated, reason: Reason. } }
        contrasts:
          - { name: change, from: phase-1, to: phase-2 }
        stop_rules:
          - { variable: pain_nrs, at_least: 4, why: Reason. }
        cautions: [Local law comes first.]
        """), Some.Dictionary);
}
