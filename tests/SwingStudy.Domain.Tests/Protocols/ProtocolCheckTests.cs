using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tests.Declarations.Support;

namespace SwingStudy.Domain.Tests.Protocols;

public sealed class ProtocolCheckTests : IDisposable
{
    private const string Whole = """
        name: small
        version: 1.0.0
        title: Small
        question: Does it help?
        design: pre-post
        phases:
          - { name: before, role: baseline, minimum_sessions: 5, minimum_swings: 10, why: Reason. }
          - { name: with-cue, role: intervention, minimum_sessions: 5, minimum_swings: 10, cue: press, why: Reason. }
          - { name: later, role: follow-up, minimum_sessions: 5, minimum_swings: 10, days_after: 14, why: Reason. }
        randomization: { kind: phase-start, earliest_session: 6, latest_session: 25, seed: 1, why: Reason. }
        fixed_conditions: [club, surface]
        eligibility: { minimum_age: 18, age_of_majority: 18, why: Reason. }
        outcomes:
          - { variable: club_head_speed, role: primary, smallest_worthwhile: { amount: 2, unit: mph, basis: stated, reason: Reason. }, contrasts: [change] }
          - { variable: launch_angle, role: secondary }
        contrasts:
          - { name: change, from: before, to: with-cue }
          - { name: kept, from: before, to: later }
        screening:
          - { rule: impossible, action: exclude-value, why: Reason. }
          - { rule: robust-outlier, variables: [club_head_speed], action: keep, settings: { limit: 4 }, why: Reason. }
        stop_rules:
          - { variable: pain_nrs, at_least: 4, why: Reason. }
        cautions: [Local law comes first.]
        curves:
          - { channel: total_force_y, contrasts: [kept] }
          - { channel: grip_speed }
        """;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void AWholeProtocolIsReadInEveryPartAndHasNoWeakness()
    {
        var read = Read(Whole);
        Assert.True(read.Succeeded(out var protocol), string.Join('\n', read.Problems));

        Assert.Equal(("small", DesignKind.PrePost, 3), (protocol.Name, protocol.Design, protocol.Phases.Count));
        Assert.Equal(new Phase("later", PhaseRole.FollowUp, 5, 10, 14, null, "Reason.") { Line = 9 }, protocol.Phases[2]);
        Assert.Equal(new Randomization("phase-start", 6, 25, 1) { Why = "Reason.", Line = 10 }, protocol.Randomization);
        Assert.Equal(0.89408, protocol.Outcomes[0].SmallestWorthwhile!.Amount, 1e-12);
        Assert.Equal(new Contrast("kept", "before", "later") { Line = 18 }, protocol.Contrasts[1]);
        Assert.Equal(("total_force_y", "kept", 26), (protocol.Curves[0].Channel, Assert.Single(protocol.Curves[0].Contrasts), protocol.Curves[0].Line));
        Assert.Equal(("grip_speed", 0), (protocol.Curves[1].Channel, protocol.Curves[1].Contrasts.Count));
        var rule = protocol.Screening[1];
        Assert.Equal((4.0, 8.0), (ScreeningRuleKind.Find(rule.Rule)!.Value(rule, "limit"), ScreeningRuleKind.Find(rule.Rule)!.Value(rule, "minimum_swings")));
        Assert.Empty(ProtocolCheck.Review(protocol, Some.Dictionary).Warnings);
    }

    [Theory]
    [InlineData("to: with-cue }", "to: with-que }", "17: contrast 'change' names the phase 'with-que'; expected one of before, with-cue, later. Did you mean 'with-cue'? [phase-unknown]")]
    [InlineData("from: before, to: with-cue", "from: with-cue, to: before", "17: contrast 'change' goes back in time; expected 'from' before 'to'. Swap 'from' and 'to'. [contrast-order]")]
    [InlineData("from: before, to: with-cue", "from: before, to: before", "17: contrast 'change' compares 'before' with itself; expected two phases. Change 'from' or 'to'. [contrast-same]")]
    [InlineData("variable: launch_angle", "variable: club", "15: outcome 'club' is not a number; expected a number or count of the dictionary. Choose a numeric variable. [outcome-not-numeric]")]
    [InlineData("variable: launch_angle", "variable: launch_angel", "15: 'launch_angel' is no variable of the dictionary small 1.0.0; expected the name of a variable. Did you mean 'launch_angle'? [variable-unknown]")]
    [InlineData("variable: launch_angle", "variable: club_head_speed", "15: outcome 'club_head_speed' is declared twice; expected distinct names. Rename or remove one of them; the first is in line 14. [name-repeated]")]
    [InlineData("role: primary, smallest_worthwhile: { amount: 2, unit: mph, basis: stated, reason: Reason. },", "role: primary,", "14: the primary outcome 'club_head_speed' has no 'smallest_worthwhile'; expected the smallest change that matters, with its basis and reason, said before data. Add 'smallest_worthwhile: { amount: ..., basis: stated, reason: ... }'. [worthwhile-missing]")]
    [InlineData("unit: mph", "unit: yd", "14: 'smallest_worthwhile' of outcome 'club_head_speed': '[yd_i]' measures length, 'm/s' measures speed; expected a unit of speed, such as m/s. Correct the unit, or map the column to another variable. [unit-dimension]")]
    [InlineData("contrasts: [change]", "contrasts: [changes]", "14: outcome 'club_head_speed' names the contrast 'changes'; expected one of change, kept. Name a contrast of this protocol. [contrast-unknown]")]
    [InlineData("contrasts: [kept]", "contrasts: [keeps]", "26: curve 'total_force_y' names the contrast 'keeps'; expected one of change, kept. Name a contrast of this protocol. [contrast-unknown]")]
    [InlineData("channel: grip_speed", "channel: total_force_y", "27: curve 'total_force_y' is declared twice; expected distinct names. Rename or remove one of them; the first is in line 26. [name-repeated]")]
    [InlineData("earliest_session: 6", "earliest_session: 4", "10: the intervention may start at session 4, and 'before' needs 5 sessions before; expected 'earliest_session' of 6 or more. Move the window, or ask for fewer baseline sessions. [draw-window]")]
    [InlineData("latest_session: 25, ", "", "10: the start of the intervention is drawn without a window; expected 'earliest_session' and 'latest_session'. Add both. [draw-window]")]
    [InlineData("role: intervention", "role: follow-up", "7: a design of kind 'pre-post' has the phases baseline, follow-up, follow-up; expected at least 1 baseline and 1 intervention. Add the missing phases, or choose another design. [design-phases]")]
    [InlineData("variables: [club_head_speed], ", "", "21: screening rule 'robust-outlier' names no variables; expected the variables it looks at. Add 'variables: [...]'. [rule-variables]")]
    [InlineData("variable: pain_nrs", "variable: club", "23: the stop rule watches 'club', which is not a number; expected a rating, a count or a yes-or-no. Choose a numeric variable or a boolean one. [stop-rule-variable]")]
    [InlineData("limit: 4", "limit: 40", "21: 'limit' is 40; expected modified z-score: 0.6745 times the distance from the median over the median absolute deviation, from 1 to 20. Write a value in that range. [value-range]")]
    public void AContradictionIsToldWithFileLineAndMend(string from, string to, string expected)
    {
        var problem = Assert.Single(Read(Broken(from, to)).Problems);

        Assert.Equal($"{Path.Combine(_folder.Path, "p.yaml")}:{expected}", problem.ToString());
    }

    [Theory]
    [InlineData("fixed_conditions: [club, surface]", "fixed_conditions: [club, ball_speed]", "condition-not-category")]
    [InlineData("minimum_age: 18, ", "", "minors-unclear")]
    [InlineData("role: primary", "role: mechanism", "primary-missing")]
    [InlineData("kind: phase-start, earliest_session: 6, latest_session: 25", "kind: order", "draw-players")]
    public void AContradictionOfTheWholeIsToldByItsCode(string from, string to, string code) =>
        Assert.Equal(code, Assert.Single(Read(Broken(from, to)).Problems).Code);

    [Theory]
    [InlineData("role: follow-up, minimum_sessions: 5", "role: follow-up, minimum_sessions: 1", "one-session", 9)]
    [InlineData("role: baseline, minimum_sessions: 5", "role: baseline, minimum_sessions: 2", "short-baseline", 7)]
    [InlineData("role: intervention, minimum_sessions: 5", "role: intervention, minimum_sessions: 4", "few-points", 8)]
    [InlineData("days_after: 14, ", "", "retention-soon", 9)]
    [InlineData("days_after: 14, ", "days_after: 14, cue: press, ", "retention-cued", 9)]
    [InlineData("latest_session: 25", "latest_session: 15", "draw-too-small", 10)]
    [InlineData("randomization: { kind: phase-start, earliest_session: 6, latest_session: 25, seed: 1, why: Reason. }\n", "", "not-randomized", null)]
    [InlineData("fixed_conditions: [club, surface]\n", "", "nothing-fixed", null)]
    [InlineData("rule: impossible", "rule: outside-typical", "typical-excludes", 20)]
    [InlineData("stop_rules:\n  - { variable: pain_nrs, at_least: 4, why: Reason. }\n", "", "no-stop-rule", null)]
    [InlineData("cautions: [Local law comes first.]", "", "no-cautions", null)]
    public void AWeaknessIsAWarningAndDoesNotStopTheProtocol(string from, string to, string code, int? line)
    {
        var read = Read(Broken(from, to));
        Assert.True(read.Succeeded(out var protocol), string.Join('\n', read.Problems));

        var warning = Assert.Single(ProtocolCheck.Review(protocol, Some.Dictionary).Warnings);
        Assert.Equal((code, line), (warning.Code, warning.Place.Row));
        Assert.NotEmpty(warning.Mend);
    }

    [Fact]
    public void ADrawThatCannotReachTheWantedErrorRateSaysTheSmallestPossibleP()
    {
        Assert.True(Read(Broken("latest_session: 25", "latest_session: 15")).Succeeded(out var protocol));

        Assert.Equal(
            "the draw chooses among 10 assignments, so that no p value can be below 0.1",
            Assert.Single(ProtocolCheck.Review(protocol, Some.Dictionary).Warnings).Found);
    }

    [Fact]
    public void ASettingThatARuleDoesNotKnowIsACallersMistake()
    {
        var rule = new ScreeningRule("impossible", [], ScreeningAction.Keep, new Dictionary<string, double>(), "Reason.");

        Assert.Throws<ArgumentException>(() => ScreeningRuleKind.Find("impossible")!.Value(rule, "limit"));
    }

    private static string Broken(string from, string to)
    {
        Assert.Contains(from, Whole, StringComparison.Ordinal);
        return Whole.Replace(from, to);
    }

    private Outcome<Protocol> Read(string yaml) => ProtocolReader.Read(_folder.Write("p.yaml", yaml), Some.Dictionary);
}
