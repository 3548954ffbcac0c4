using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Domain.Variables;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Analyse.Findings;

/// <summary>Rival explanations that lie in the data are found and named.</summary>
public sealed class RivalTests
{
    private static readonly PlayedSwing[] Clear = [.. Players.Of("P01", [40, 40.1, 39.9], [43, 43.1, 42.9])];

    [Fact]
    public void ABallThatChangedWithTheCueIsNamedWithWhatWouldSettleIt()
    {
        var (verdict, reasons) = Judge(Clear.Select(swing => swing with { Ball = swing.Phase == "cue" ? "soft premium" : "Range " }));
        Assert.Equal("suggestive", verdict);
        Assert.Contains("condition-changed: the ball changed together with the phase: range in baseline, soft premium in cue", reasons, StringComparison.Ordinal);
        Assert.Contains("to-settle: repeat cue with the ball of baseline (range)", reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void SpellingIsNoOtherBallAndAStrayOneStandsInNoVerdictsWay()
    {
        Assert.Equal("supported", Judge(Clear.Select(swing => swing with { Ball = swing.Phase == "cue" ? "RANGE" : "range" })).Verdict);
        var stray = Judge(Clear.Select(swing => swing with { Ball = swing is { Phase: "cue", Sequence: 1, Session: "P01-4" } ? "premium" : "range" }));
        Assert.Equal("supported", stray.Verdict);
        Assert.Contains("condition-mixed: a few swings were struck with another ball", stray.Reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void AnotherDeviceInTheLaterPhaseForbidsSupport()
    {
        var (captures, links) = Recorded(Clear, swing => swing.Phase == "cue" ? "plates" : "strike");
        var (verdict, reasons) = Judge(Clear, captures, links);
        Assert.Equal("suggestive", verdict);
        Assert.Contains("sensor-changed: another device measured it in the later phase (strike in baseline, plates in cue)", reasons, StringComparison.Ordinal);
        Assert.Equal("supported", Judge(Clear, [.. Tables(Recorded(Clear, _ => "strike"))]).Verdict);
    }

    [Fact]
    public void ATrendThatWasThereBeforeIsNamed()
    {
        var (verdict, reasons) = Judge(Players.Of("P01", [40, 41, 42, 43], [44, 45, 46, 47]));
        Assert.Equal("suggestive", verdict);
        Assert.Contains("baseline-trend: it rose by about 2.2 mph from session to session in baseline already", reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void ASteadyTrendThatTooFewSessionsWouldShowForbidsSupport()
    {
        // Clearly more than noise, but three sessions whose means differ by as much as these may as well have been on the way.
        var unsure = Judge(Players.Of("P01", [40, 41, 40.2], [43.1, 42.4, 43.9]));
        Assert.Equal("suggestive", unsure.Verdict);
        Assert.Contains("steady-trend: a steady trend from session to session, cue or no cue, could explain it", unsure.Reasons, StringComparison.Ordinal);
        Assert.Contains("take the cue away again and see whether the change goes, or let chance decide when the cue comes", unsure.Reasons, StringComparison.Ordinal);
        Assert.DoesNotContain("baseline-trend", unsure.Reasons, StringComparison.Ordinal);

        var sure = Judge(Players.Of("P01", [40, 41, 40.2, 40.9, 40.1, 40.6, 40.3, 40.8], [43.1, 42.4, 43.9, 42.6, 43.4, 42.9, 43.3, 42.7]));
        Assert.Equal("supported", sure.Verdict);
        Assert.DoesNotContain("steady-trend", sure.Reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void FatigueIsNamedAndForbidsOnlyWhereThePhasesSampleSessionsUnequally()
    {
        // Speeds fall by 0.2 m/s a swing: the cue, measured early in its sessions alone, gains by it.
        PlayedSwing[] Tired(int baseline) => [.. Players.Of("P01", [40, 40.1, 39.9], [40, 40.1, 39.9]).Select(swing => swing with
        {
            Sequence = swing.Sequence + (swing.Phase == "baseline" ? baseline : 0),
            Values = new() { ["club_head_speed"] = 40 + (0.05 * (swing.Session[^1] % 3)) - (0.2 * (swing.Sequence + (swing.Phase == "baseline" ? baseline : 0))) },
        })];
        var late = Judge(Tired(20));
        Assert.Equal("suggestive", late.Verdict);
        Assert.Contains("order-in-session: within sessions it falls by about", late.Reasons, StringComparison.Ordinal);
        Assert.Contains("to-settle: compare the same places of the session in both phases", late.Reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void SwingsOfOneDayCannotTellHoweverLargeTheJumpAndHoweverMuchOthersKnow()
    {
        PlayedSwing[] swings = [.. Players.Of("P01", [39.3], [45.2]), .. Players.Others()];
        var tables = Analysis.Of(swings);
        // Both sessions of P01 on one day: the second begins an hour after the first.
        var moved = tables["swings"];
        var struck = new InstantColumn([.. moved.Instants("struck_at").Select((at, i) => moved.Texts("session")[i] == "P01-2" ? at - (23L * 3600 * 1000) : at)]);
        tables["swings"] = new RowSet(moved.Table, [.. moved.Table.Columns.Select(column => column.Name == "struck_at" ? struck : moved[column.Name])]);
        var (verdict, reasons) = Of(Body.Run("findings", "findings", tables.Values), "P01");
        Assert.Equal("cannot tell", verdict);
        Assert.Contains("one-day: all swings of baseline and cue were struck on one day", reasons, StringComparison.Ordinal);
        Assert.Contains("to-settle: measure baseline and cue on different days, at least two sessions of each", reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void SeveralPlannedComparisonsAreAdjustedFor()
    {
        // t = 3.0 with 4 degrees of freedom: p = 0.04 alone, and 0.08 when two primary contrasts are planned.
        var protocol = Some.Protocol with { Outcomes = [Some.Protocol.Outcomes[0] with { Contrasts = [], SmallestWorthwhile = null }] };
        PlayedSwing[] swings =
        [
            .. Players.Of("P01", [40, 40.5, 39.5], [41.225, 41.725, 40.725]),
            .. Players.Of("P01", [], []).Concat(new[] { 7, 8, 9 }.SelectMany(day => PlayedSwing.Of($"P01-{day}", "other-club", "club_head_speed", [.. new[] { 0, 0.2, -0.2 }.Select(noise => 40 + (0.5 * (day - 8)) + noise)]))),
        ];
        var two = Of(Analysis.Of(swings, Setup(protocol))["findings"], "P01");
        Assert.Equal("suggestive", two.Verdict);
        Assert.Contains("several-comparisons: one of 2 planned comparisons of primary outcomes", two.Reasons, StringComparison.Ordinal);
        Assert.Equal("supported", Of(Analysis.Of(swings, Setup(protocol with { Analysis = protocol.Analysis with { Multiplicity = "none" } }))["findings"], "P01").Verdict);
    }

    [Fact]
    public void WhatMovedInTheMovementStandsBesideTheOutcome()
    {
        var protocol = Some.Protocol with { Outcomes = [Some.Protocol.Outcomes[0], new("face_angle", OutcomeRole.Mechanism, null, [])] };
        var swings = Clear.Select(swing => swing with { Values = new(swing.Values) { ["face_angle"] = (swing.Phase == "cue" ? 3.0 : 1) + (0.1 * (swing.Sequence % 3)) } });
        var (_, reasons) = Of(Analysis.Of(swings, Setup(protocol))["findings"], "P01");
        Assert.Contains("moved-in-size: face angle: 2.0", reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void PlatesThatWeighThePlayerOtherwiseForbidSupportForForces()
    {
        var setup = Forces("{BW}", null);
        var same = Of(Analysis.Of(Clear.Select(swing => Weighed(swing, 700)), setup)["findings"], "P01", "peak");
        var drifted = Of(Analysis.Of(Clear.Select(swing => Weighed(swing, swing.Phase == "cue" ? 721 : 700)), setup)["findings"], "P01", "peak");
        Assert.Equal(("supported", "suggestive"), (same.Verdict, drifted.Verdict));
        Assert.Contains("calibration-drift: body weight on the plates rose by 3.0 % from baseline to cue", drifted.Reasons, StringComparison.Ordinal);
    }

    [Fact]
    public void AClockThatRanOffInOnePhaseIsNamedWhereTimesAreCompared()
    {
        var clocks = new RowSetBuilder(StudyTables.Clocks);
        clocks.Add(("participant", "P01"), ("session", "P01-4"), ("source", "plates"), ("drift_ppm", 420.0));
        clocks.Add(("participant", "P01"), ("session", "P01-1"), ("source", "plates"), ("drift_ppm", 20.0));
        var swings = Clear.Select(swing => Weighed(swing, 700));
        var (_, reasons) = Of(Analysis.Of(swings, Forces("ms", -500), clocks.Build())["findings"], "P01", "peak");
        Assert.Contains("clock-drift: the clock of plates ran off by 420 millionths in cue alone", reasons, StringComparison.Ordinal);
        Assert.DoesNotContain("clock-drift", Of(Analysis.Of(swings, Forces("{BW}", null), clocks.Build())["findings"], "P01", "peak").Reasons, StringComparison.Ordinal);
    }

    private static PlayedSwing Weighed(PlayedSwing swing, double weight) =>
        swing with { Values = new() { ["peak"] = swing.Values["club_head_speed"], ["body_weight"] = weight } };

    private static StudySetup Forces(string unit, double? minimum)
    {
        var setup = Setup(Some.Protocol with { Outcomes = [new("peak", OutcomeRole.Primary, null, ["with-cue"])] });
        Variable[] more =
        [
            new() { Name = "peak", Title = "Peak", Description = "", Type = VariableType.Number, Group = "test", Unit = unit, Minimum = minimum },
            new() { Name = "body_weight", Title = "Body weight", Description = "", Type = VariableType.Number, Group = "test", Unit = "N" },
        ];
        return setup with { Dictionary = new VariableDictionary("test", new Version(1, 0, 0), [.. Some.Dictionary.Variables, .. more], Sha256.Of("forces")) };
    }

    private static StudySetup Setup(Protocol protocol) => Some.Setup(new StudyFolder("/nowhere"), protocol with { Hash = Sha256.Of("other") });

    private static (string Verdict, string Reasons) Judge(IEnumerable<PlayedSwing> swings, params RowSet[] more) => Of(Analysis.Of(swings, null, more)["findings"], "P01");

    private static (string Verdict, string Reasons) Of(RowSet findings, string participant, string outcome = "club_head_speed")
    {
        var row = Enumerable.Range(0, findings.Count).First(i => findings.Texts("participant")[i] == participant && findings.Texts("outcome")[i] == outcome && findings.Texts("contrast")[i] == "with-cue");
        return (findings.Texts("verdict")[row]!, findings.Texts("reasons")[row]!);
    }

    private static IEnumerable<RowSet> Tables((RowSet Captures, RowSet Links) recorded) => [recorded.Captures, recorded.Links];

    private static (RowSet Captures, RowSet Links) Recorded(IEnumerable<PlayedSwing> swings, Func<PlayedSwing, string> source)
    {
        var links = new RowSetBuilder(StudyTables.Links);
        var captures = Some.Captures(swings.Select((swing, i) =>
        {
            var capture = new CaptureRow(source(swing), i + 1, Some.Morning + Duration.FromSeconds(i)) { Participant = swing.Participant, Values = swing.Values };
            links.Add(("capture_id", capture.Id), ("swing_id", swing.Id), ("participant", swing.Participant), ("method", "time"), ("source", source(swing)), ("device", source(swing)));
            return capture;
        }));
        return (captures, links.Build());
    }
}
