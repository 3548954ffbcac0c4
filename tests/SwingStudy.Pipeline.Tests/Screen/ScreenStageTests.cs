using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Storage.Registry;

namespace SwingStudy.Pipeline.Tests.Screen;

public sealed class ScreenStageTests
{
    private static readonly double[] Steady = [40, 40.4, 39.8, 40.2, 40.1, 39.6, 40.3, 39.9];

    [Fact]
    public void AnUntypicalValueIsKeptAndFlagged()
    {
        var flags = Flags(PlayedSwing.Of("P01-1", "baseline", "club_head_speed", 40, 60));
        Assert.Equal(["P01-1-02|club_head_speed|outside-typical|keep"], flags);
    }

    [Fact]
    public void AnImpossibleDerivedValueIsExcluded()
    {
        var flags = Flags(PlayedSwing.Of("P01-1", "baseline", "speed_ratio", 1.4, 1.7));
        Assert.Contains("P01-1-02|speed_ratio|impossible|exclude-value", flags);
    }

    [Fact]
    public void ARejectedCellBecomesAFlagWithItsRawText()
    {
        var rejects = new RowSetBuilder(StudyTables.Rejects);
        rejects.Add(("raw", "999"), ("reason", "out-of-range"), ("detail", "3 to 75 m/s"), ("extent", "cell"), ("column", "Club"), ("variable", "club_head_speed"), ("capture_id", "c-1"));
        rejects.Add(("raw", "x"), ("reason", "unparsable"), ("detail", "a number"), ("extent", "cell"), ("column", "Ball"), ("variable", "ball_speed"), ("capture_id", "other-1"));
        var links = new RowSetBuilder(StudyTables.Links);
        links.Add(("capture_id", "c-1"), ("swing_id", "P01-1-01"), ("participant", "P01"), ("method", "session"));

        var flags = Body.Run("screen", "flags", [PlayedSwing.Measures([new PlayedSwing("P01-1", "baseline", 1)]), links.Build(), rejects.Build()]);

        Assert.Equal(1, flags.Count);
        Assert.Equal("impossible", flags.Texts("rule")[0]);
        Assert.Equal("c-1", flags.Texts("capture_id")[0]);
        Assert.Contains("'999'", flags.Texts("detail")[0], StringComparison.Ordinal);
    }

    [Fact]
    public void AWildValueIsFoundByMedianAndMedianDistance()
    {
        var flags = Flags(PlayedSwing.Of("P01-1", "baseline", "club_head_speed", [.. Steady, 45]), Some.Rule("robust-outlier", ScreeningAction.ExcludeSwing, "club_head_speed"));
        Assert.Equal(["P01-1-09|club_head_speed|robust-outlier|exclude-swing"], flags);
    }

    [Fact]
    public void FewSwingsAreNotJudgedForOutliers() =>
        Assert.Empty(Flags(PlayedSwing.Of("P01-1", "baseline", "club_head_speed", 40, 40.1, 40.2, 48), Some.Rule("robust-outlier", ScreeningAction.Keep, "club_head_speed")));

    [Fact]
    public void OtherClubsOfASessionAreJudgedApart()
    {
        IEnumerable<PlayedSwing> swings = [.. PlayedSwing.Of("P01-1", "baseline", "club_head_speed", Steady),
            .. PlayedSwing.Of("P01-1", "baseline", "club_head_speed", 50, 50.1).Select(swing => swing with { Sequence = swing.Sequence + 20, Club = "driver" })];
        Assert.Empty(Flags(swings, Some.Rule("robust-outlier", ScreeningAction.Keep, "club_head_speed")));
    }

    [Fact]
    public void AnUnreachableRatioNamesTheSpeedThatLiesApart()
    {
        var swings = Ratio(Steady.Select(club => (club, 1.4 * club)).Append((40.0, 75.0)).Append((33.0, 56.2)));
        var flags = Flags(swings, Some.Rule("ratio-limit", ScreeningAction.ExcludeValue));
        Assert.Contains("P01-1-09|ball_speed|ratio-limit|exclude-value", flags);
        Assert.DoesNotContain("P01-1-09|club_head_speed|ratio-limit|exclude-value", flags);
        Assert.Contains("P01-1-10|club_head_speed|ratio-limit|exclude-value", flags);
        Assert.DoesNotContain("P01-1-10|ball_speed|ratio-limit|exclude-value", flags);
        Assert.Contains("P01-1-10|speed_ratio|ratio-limit|exclude-value", flags);
    }

    [Fact]
    public void WithoutOthersToTellBothSpeedsAreSuspect()
    {
        var flags = Flags(Ratio([(40.0, 75.0)]), Some.Rule("ratio-limit", ScreeningAction.ExcludeValue));
        Assert.Contains("P01-1-01|ball_speed|ratio-limit|exclude-value", flags);
        Assert.Contains("P01-1-01|club_head_speed|ratio-limit|exclude-value", flags);
    }

    [Fact]
    public void AFrozenChannelIsFlaggedFromItsFirstValue()
    {
        var flags = Flags(PlayedSwing.Of("P01-1", "baseline", "carry_distance", 150, 151, 151, 151, 151, 149), Some.Rule("repeated-value", ScreeningAction.ExcludeValue, "carry_distance"));
        Assert.Equal(4, flags.Count);
        Assert.StartsWith("P01-1-02", flags[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2.23694, true)]
    [InlineData(3.6, true)]
    [InlineData(1.09, false)]
    [InlineData(1.5, false)]
    public void ASessionInOtherUnitsIsFlaggedWhole(double factor, bool isFlagged)
    {
        IEnumerable<PlayedSwing> swings = new[] { 1, 2, 3 }.SelectMany(day => PlayedSwing.Of($"P01-{day}", day == 3 ? "cue" : "baseline", "club_head_speed",
            [.. Steady.Select(speed => day == 2 ? speed * factor / 1.5 : speed / 1.5)]));
        var flags = Flags(swings, Some.Rule("unit-jump", ScreeningAction.ExcludeValue, "club_head_speed")).Where(flag => flag.Contains("unit-jump", StringComparison.Ordinal)).ToList();
        Assert.Equal(isFlagged ? Steady.Length : 0, flags.Count);
        Assert.All(flags, flag => Assert.StartsWith("P01-2-", flag, StringComparison.Ordinal));
    }

    [Fact]
    public void RulesGiveTheSameWhateverThePhasesAre()
    {
        ScreeningRule[] rules = [.. ScreeningRuleKind.All.Select(kind => Some.Rule(kind.Name, ScreeningAction.ExcludeValue, kind.NeedsVariables ? ["club_head_speed"] : []))];
        PlayedSwing[] swings = [.. PlayedSwing.Of("P01-1", "baseline", "club_head_speed", [.. Steady, 60]), .. PlayedSwing.Of("P01-2", "cue", "club_head_speed", [90, 90, 90, 90])];
        Assert.Equal(Flags(swings, rules), Flags(swings.Select(swing => swing with { Phase = swing.Phase == "cue" ? "baseline" : "cue" }), rules));
        Assert.NotEmpty(Flags(swings, rules));
    }

    [Fact]
    public void PracticeSwingsNeverCountAndAreNotScreened()
    {
        PlayedSwing[] swings = [.. PlayedSwing.Of("P01-1", "baseline", "club_head_speed", 60, 40)];
        swings[0] = swings[0] with { IsPractice = true };
        Assert.Empty(Flags(swings));
        Assert.Equal([false, true], Included(swings, Decision(1, "include", """{"swing":"P01-1-01"}""")));
    }

    [Fact]
    public void TheNewestDecisionAboutASwingWinsOverRules()
    {
        PlayedSwing[] swings = [.. PlayedSwing.Of("P01-1", "baseline", "club_head_speed", [.. Steady, 45])];
        var rule = Some.Rule("robust-outlier", ScreeningAction.ExcludeSwing, "club_head_speed");
        Assert.False(Included(swings, [], rule)[^1]);
        Assert.True(Included(swings, Decision(1, "include", """{"swing":"P01-1-09"}"""), rule)[^1]);
        Assert.False(Included(swings, [.. Decision(1, "include", """{"swing":"P01-1-09"}"""), .. Decision(2, "exclude", """{"swing":"P01-1-09"}""")], rule)[^1]);
        Assert.True(Included(swings, Decision(1, "exclude", """{"swing":"P01-1-09","variable":"club_head_speed"}"""))[^1]);
    }

    [Fact]
    public void ADecisionStandsInTheFlagsWithPersonAndReason()
    {
        var flags = Body.Run("screen", "flags", [PlayedSwing.Measures(PlayedSwing.Of("P01-1", "baseline", "club_head_speed", 40))],
            decisions: Decision(1, "exclude", """{"swing":"P01-1-01"}"""));
        Assert.Equal(("decision", "exclude-swing", "Coach", "seen on video"),
            (flags.Texts("rule")[0], flags.Texts("action")[0], flags.Texts("decided_by")[0], flags.Texts("detail")[0]));
    }

    [Fact]
    public void NoValueIsEverDeleted()
    {
        var measures = PlayedSwing.Measures(Ratio([(40.0, 75.0), (90.0, 10.0)]));
        var swings = Body.Run("screen", "swings", [measures]);
        Assert.Equal(measures.Numbers("ball_speed"), swings.Numbers("ball_speed"));
        Assert.Equal(measures.Numbers("club_head_speed"), swings.Numbers("club_head_speed"));
    }

    [Fact]
    public void TheOrderOfRowsDoesNotMatter()
    {
        var measures = PlayedSwing.Measures([.. Ratio([(40.0, 75.0), (60.0, 10.0), (40.0, 56.0)]), .. PlayedSwing.Of("P01-2", "cue", "club_head_speed", [.. Steady, 60])]);
        var (flags, swings) = (Body.Run("screen", "flags", [measures]).Text(), Body.Run("screen", "swings", [measures]).Text());
        for (var seed = 1; seed < 6; seed++)
        {
            Assert.Equal(flags, Body.Run("screen", "flags", [measures.Shuffled(seed)]).Text());
            Assert.Equal(swings, Body.Run("screen", "swings", [measures.Shuffled(seed)]).Text());
        }
    }

    private static IEnumerable<PlayedSwing> Ratio(IEnumerable<(double Club, double Ball)> speeds) => speeds.Select((speed, i) => new PlayedSwing("P01-1", "baseline", i + 1)
    {
        Values = new() { ["club_head_speed"] = speed.Club, ["ball_speed"] = speed.Ball, ["speed_ratio"] = speed.Ball / speed.Club },
    });

    private static IReadOnlyList<string> Flags(IEnumerable<PlayedSwing> swings, params ScreeningRule[] rules)
    {
        var flags = Body.Run("screen", "flags", [PlayedSwing.Measures(swings)], setup: With(rules));
        return [.. Enumerable.Range(0, flags.Count).Select(i => $"{flags.Texts("swing_id")[i]}|{flags.Texts("variable")[i]}|{flags.Texts("rule")[i]}|{flags.Texts("action")[i]}")];
    }

    private static bool?[] Included(IEnumerable<PlayedSwing> swings, Decision[] decisions, params ScreeningRule[] rules) =>
        Body.Run("screen", "swings", [PlayedSwing.Measures(swings)], decisions: decisions, setup: With(rules)).Booleans("included");

    private static Decision[] Decision(long id, string kind, string subject) => [new Decision(id, kind, subject, "seen on video", "Coach", Some.Morning)];

    private static StudySetup With(ScreeningRule[] rules) => Body.Setup with { Protocol = Some.Protocol with { Screening = rules } };
}
