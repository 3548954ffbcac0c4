using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Analyse;

public sealed class FindingStageTests
{
    [Fact]
    public void AClearChangeIsSupportedAndSaidInDisplayUnits()
    {
        var finding = Judge(Players.Of("P01", [40, 40.1, 39.9], [43, 43.1, 42.9]));
        Assert.Equal("supported", finding.Verdict);
        // 3 m/s are 6.711 mph; s² of session means 0.01, SE = √(0.01 · 2/3) = 0.08165, t(0.975; 4) = 2.776445: ±0.2267 m/s = ±0.507 mph.
        Assert.Equal(
            "P01: club head speed rose by 6.71 mph from baseline to cue, an improvement (95 % confidence interval 6.20 to 7.22 mph). "
            + "That is more than the 0.51 mph that this player's own scatter can make. "
            + "That the true change is worthwhile, above 1.12 mph in that direction, is almost certain (more than 99 %).",
            finding.Statement);
    }

    [Fact]
    public void OneSessionWithoutKnownVarianceCannotTell()
    {
        var finding = Judge(Players.Of("P01", [40], [43]));
        Assert.Equal("cannot tell", finding.Verdict);
        Assert.Contains("one-session-without-session-variance", finding.Reasons, StringComparison.Ordinal);
        Assert.Contains("few-sessions: 1 session in baseline, planned were 2", finding.Reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void APhaseWithoutSwingsCannotTell() => Assert.Equal("cannot tell", Judge(Players.Of("P01", [40, 41], [])).Verdict);

    [Fact]
    public void AChangeWithinNoiseIsNotShown()
    {
        var finding = Judge(Players.Of("P01", [40, 42, 38], [40.5, 42.3, 38.2]));
        Assert.Equal("not shown", finding.Verdict);
        Assert.Contains("within-noise", finding.Reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void ARealButSmallChangeIsSuggestive()
    {
        var finding = Judge(Players.Of("P01", [40, 40.02, 39.98], [40.3, 40.32, 40.28]));
        Assert.Equal("suggestive", finding.Verdict);
        Assert.Contains("worthwhile-unsure", finding.Reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void AConditionThatChangedWithThePhaseForbidsSupport()
    {
        var swings = Players.Of("P01", [40, 40.1, 39.9], [43, 43.1, 42.9]).Select(swing => swing with { Club = swing.Phase == "cue" ? "driver" : "iron" });
        var finding = Judge(swings);
        Assert.Equal("suggestive", finding.Verdict);
        Assert.Contains("condition-changed: the club changed together with the phase: iron in baseline, driver in cue", finding.Reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void UnequalExclusionsForbidSupport()
    {
        var swings = Players.Of("P01", [40, 40.1, 39.9], [43, 43.1, 42.9]).Select(swing => swing with { Included = swing.Phase == "baseline" || swing.Sequence < 4 });
        var finding = Judge(swings);
        Assert.Equal("suggestive", finding.Verdict);
        Assert.Contains("unequal-exclusions: 0 % of the swings in baseline and 40 % in cue", finding.Reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void AFallIsSaidToBeForTheWorse() =>
        Assert.Contains("fell by 6.71 mph from baseline to cue, for the worse", Judge(Players.Of("P01", [43, 43.1, 42.9], [40, 40.1, 39.9])).Statement, StringComparison.Ordinal);

    [Fact]
    public void TheStudyCountsPlayersAndNeverTellsAMeanAlone()
    {
        PlayedSwing[] swings = [.. Players.Of("P01", [40, 40.1, 39.9], [43, 43.1, 42.9]), .. Players.Of("P02", [38, 38.1, 37.9], [40.6, 40.7, 40.5]),
            .. Players.Of("P03", [41, 41.1, 40.9], [41, 41.1, 40.9])];
        var findings = Findings(swings);
        var row = Array.IndexOf(findings.Texts("scope"), "study");
        Assert.Equal("suggestive", findings.Texts("verdict")[row]);
        Assert.Contains("supported for 2 of 3 players who could be judged (2 better, 0 worse)", findings.Texts("statement")[row], StringComparison.Ordinal);
        Assert.Contains("P03: not shown", findings.Texts("reasons")[row], StringComparison.Ordinal);
        Assert.Equal(1, findings.Texts("scope").Count(scope => scope == "study"));
    }

    [Fact]
    public void APlayerWithoutAnyValueIsNotMeasuredAndCountsNeitherForNorAgainst()
    {
        PlayedSwing[] swings = [.. Players.Of("P01", [40, 40.1, 39.9], [43, 43.1, 42.9]), .. Players.Of("P02", [38, 38.1, 37.9], [40.6, 40.7, 40.5]),
            .. Players.Of("P03", [60, 60.1, 59.9], [60, 60.1, 59.9], variable: "ball_speed")];
        var findings = Findings(swings);
        var study = Enumerable.Range(0, findings.Count).Single(i => findings.Texts("scope")[i] == "study" && findings.Texts("outcome")[i] == "club_head_speed");
        Assert.Contains("supported for 2 of 2 players who could be judged (2 better, 0 worse). It was measured in 2 of 3 players.", findings.Texts("statement")[study], StringComparison.Ordinal);
        Assert.Contains("P03: not measured", findings.Texts("reasons")[study], StringComparison.Ordinal);
        var own = Enumerable.Range(0, findings.Count).Single(i => findings.Texts("participant")[i] == "P03" && findings.Texts("outcome")[i] == "club_head_speed");
        Assert.Equal(("cannot tell", "P03: club head speed was not measured in this player in baseline or cue."), (findings.Texts("verdict")[own], findings.Texts("statement")[own]));
    }

    [Fact]
    public void AnIntervalOfWhatMovedIsToldInTheDirectionOfTheMove()
    {
        // Means differ by 3 m/s = 6.711 mph, give or take 2.776445 · √(0.01 · 2/3) m/s = 0.507 mph (Student's t with 4 degrees of freedom).
        Assert.Contains("moved-in-size: ball speed: 6.71 mph less (interval 6.20 to 7.22 mph), supported", Moved([63, 63.1, 62.9], [60, 60.1, 59.9]), StringComparison.Ordinal);
        Assert.Contains("moved-in-size: ball speed: 6.71 mph more (interval 6.20 to 7.22 mph), supported", Moved([60, 60.1, 59.9], [63, 63.1, 62.9]), StringComparison.Ordinal);
        // Means of 61 and 62 with s² = 1: t(4) = 1.2247, p = 0.29, not told at all; with s² = 0.25 p = 0.07: suggestive, and the interval reaches over zero.
        Assert.Contains(" less to ", Moved([61, 61.5, 60.5], [62, 62.5, 61.5]), StringComparison.Ordinal);
    }

    [Fact]
    public void AComparisonThatNobodyPlannedIsExploratoryAndSupportsNothing()
    {
        IEnumerable<PlayedSwing> Played(string phase) => Players.Of("P01", [40, 40.1, 39.9], [43, 43.1, 42.9]).Select(swing => swing.Phase == "cue" ? swing with { Phase = phase } : swing);
        var rows = Findings(Played("other-club"));
        var row = Row(rows, "club_head_speed", "carried-over");
        Assert.Equal(("exploratory", "suggestive"), (rows.Texts("basis")[row], rows.Texts("verdict")[row]));
        Assert.Contains("exploratory: the protocol does not plan this comparison", rows.Texts("reasons")[row], StringComparison.Ordinal);
        Assert.DoesNotContain(("club_head_speed", "carried-over"), Findings(Played("cue")) is var planned ? planned.Texts("outcome").Zip(planned.Texts("contrast")) : []);
    }

    [Fact]
    public void TheOrderOfRowsDoesNotMatter()
    {
        PlayedSwing[] played = [.. Players.Of("P01", [40, 41], [42, 43]), .. Players.Others()];
        var tables = Analysis.Of(played);
        for (var seed = 1; seed < 4; seed++)
        {
            var shuffled = tables.Values.Select(rows => rows.Shuffled(seed)).ToList();
            Assert.Equal(tables["findings"].Text(), Body.Run("findings", "findings", shuffled).Text());
            Assert.Equal(tables["group_effects"].Text(), Body.Run("findings", "group_effects", shuffled).Text());
        }
    }

    /// <summary>Reasons of a clear change of club head speed, with which a mechanism outcome of those session means moves.</summary>
    private static string Moved(double[] before, double[] after)
    {
        var means = before.Concat(after).ToList();
        var swings = Players.Of("P01", [40, 40.1, 39.9], [43, 43.1, 42.9])
            .Select((swing, i) => swing with { Values = new(swing.Values) { ["ball_speed"] = means[i / 5] + new[] { 0, 0.2, -0.2, 0.4, -0.4 }[i % 5] } });
        var setup = Body.Setup with { Protocol = Some.Protocol with { Outcomes = [Some.Protocol.Outcomes[0], new("ball_speed", OutcomeRole.Mechanism, null, ["with-cue"])] } };
        var findings = Analysis.Of(swings, setup)["findings"];
        return findings.Texts("reasons")[Row(findings, "club_head_speed", "with-cue")]!;
    }

    private static int Row(RowSet rows, string outcome, string contrast) =>
        Enumerable.Range(0, rows.Count).Single(i => rows.Texts("scope")[i] == "player" && rows.Texts("outcome")[i] == outcome && rows.Texts("contrast")[i] == contrast);

    private static RowSet Findings(IEnumerable<PlayedSwing> swings) => Analysis.Of(swings)["findings"];

    private static (string Verdict, string Statement, string Reasons) Judge(IEnumerable<PlayedSwing> swings)
    {
        var rows = Findings(swings);
        var row = Enumerable.Range(0, rows.Count).Single(i => rows.Texts("scope")[i] == "player" && rows.Texts("outcome")[i] == "club_head_speed");
        return (rows.Texts("verdict")[row]!, rows.Texts("statement")[row]!, rows.Texts("reasons")[row]!);
    }
}
