using CsCheck;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Screen;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Analyse;

public sealed class EffectStageTests
{
    [Fact]
    public void TheDifferenceIsThatOfSessionMeansWithTheTTestOnThem()
    {
        var effects = Players.Effects(Players.Of("P01", [40, 40.6], [42, 42.8]));
        var row = effects.Row("difference");
        Assert.Equal(2.1, effects.Numbers("estimate")[row], 9);
        // t test on session means 40, 40.6 | 42, 42.8 by hand: s² = (0.18 + 0.32)/2 = 0.25, SE = √(0.25 · (1/2 + 1/2)) = 0.5, t(0.975; 2) = 4.302653.
        Assert.Equal(0.5, effects.Numbers("se")[row], 9);
        Assert.Equal(2.1 - (4.302653 * 0.5), effects.Numbers("ci_low")[row], 5);
        Assert.Equal((10L, 10L, 2L, 2L), (effects.Integers("n_from")[row], effects.Integers("n_to")[row], effects.Integers("sessions_from")[row], effects.Integers("sessions_to")[row]));
        Assert.Equal(("m/s", "honest-change"), (effects.Texts("unit")[row], effects.Texts("method")[row]));
    }

    [Fact]
    public void OneSessionWithoutKnownSessionVarianceHasNoInterval()
    {
        var effects = Players.Effects(Players.Of("P01", [40], [42]));
        var row = effects.Row("difference");
        Assert.Equal(2, effects.Numbers("estimate")[row], 9);
        Assert.Equal(double.NaN, effects.Numbers("ci_low")[row]);
        Assert.Contains("one session", effects.Texts("undefined")[row], StringComparison.Ordinal);
    }

    [Fact]
    public void OtherPlayersSessionsLendTheirVariance()
    {
        var effects = Players.Effects(Players.Of("P01", [40], [42]), others: Players.Others());
        Assert.True(effects.Numbers("ci_low")[effects.Row("difference")] > 0);
    }

    [Fact]
    public void PlannedSaysWhetherTheProtocolNamesContrastAndMeasure()
    {
        var effects = Players.Effects(Players.Of("P01", [40, 41], [42, 43]));
        Assert.True(effects.Booleans("planned")[effects.Row("difference")]);
        Assert.False(effects.Booleans("planned")[effects.Row("difference", contrast: "carried-over")]);
        Assert.True(effects.Booleans("planned")[effects.Row("difference", "face_angle", "carried-over")]);
    }

    [Fact]
    public void WhatTheDataDoNotSupportIsStoredWithItsReason()
    {
        var effects = Players.Effects(Players.Of("P01", [2, 3], [4, 5], "face_angle"));
        Assert.Equal("a ratio needs a scale with a true zero", effects.Texts("undefined")[effects.Row("percent-change", "face_angle")]);
        Assert.Contains("needs swings in both phases", effects.Texts("undefined")[effects.Row("difference")], StringComparison.Ordinal);
    }

    [Fact]
    public void ExcludedValuesAndSwingsDoNotCountUnlessAPersonSaysSo()
    {
        PlayedSwing[] swings = [.. Players.Of("P01", [40, 41], [42, 43])];
        swings[0].Values["club_head_speed"] = 70.0;
        swings[1] = swings[1] with { Included = false };
        Assert.Equal(9L, N(Players.Effects(swings)));
        Assert.Equal(8L, N(Players.Effects(swings, Flags(("ratio-limit", "exclude-value")))));
        Assert.Equal(9L, N(Players.Effects(swings, Flags(("ratio-limit", "exclude-value"), ("decision", "keep")))));
        Assert.Equal(8L, N(Players.Effects(swings, Flags(("decision", "keep"), ("decision", "exclude-value")))));

        static long? N(RowSet effects) => effects.Integers("n_from")[effects.Row("difference")];

        static RowSet Flags(params (string Rule, string Action)[] flags)
        {
            var rows = new RowSetBuilder(StudyTables.Flags);
            foreach (var (rule, action) in flags)
                rows.Add(("swing_id", "P01-1-01"), ("variable", "club_head_speed"), ("rule", rule), ("action", action), ("decided_by", rule == Flag.Decided ? "Coach" : "rule"));
            return rows.Build();
        }
    }

    [Fact]
    public void TheShareThatCarriesOverStandsBesideTheLaterContrast()
    {
        var swings = Players.Of("P01", [40, 40.2, 39.8], [44, 44.2, 43.8]).Concat(new[] { 7, 8 }.SelectMany(day =>
            PlayedSwing.Of($"P01-{day}", "other-club", "club_head_speed", [.. new[] { 0, 0.2, -0.2 }.Select(noise => 43 + noise)])));
        var effects = Players.Effects(swings);
        var row = effects.Row("share-kept", contrast: "carried-over");
        // (43 − 40)/(44 − 40) = 75 %; the limits are those of ShareKept, tested on its own.
        Assert.Equal(75, effects.Numbers("estimate")[row], 6);
        Assert.True(effects.Numbers("ci_low")[row] is > 40 and < 75 && effects.Numbers("ci_high")[row] is > 75 and < 110);
        Assert.Equal(("%", "share-kept-fieller"), (effects.Texts("unit")[row], effects.Texts("method")[row]));
        Assert.Contains("needs swings in all three phases", Players.Effects(Players.Of("P01", [40, 41], [42, 43])) is var none ? none.Texts("undefined")[none.Row("share-kept", contrast: "carried-over")] : "", StringComparison.Ordinal);
    }

    [Fact]
    public void PercentAndLogarithmTellTheSameRatio()
    {
        var effects = Players.Effects(Players.Of("P01", [40, 40], [44, 44]));
        Assert.Equal(10, effects.Numbers("estimate")[effects.Row("percent-change")], 9);
        Assert.Equal(Math.Log(1.1), effects.Numbers("estimate")[effects.Row("log-response-ratio")], 9);
    }

    [Fact]
    public void SwappingThePhasesFlipsTheSign() => Players.Means.Sample(means =>
    {
        var (there, back) = (Players.Effects(Players.Of("P01", means.Before, means.After)), Players.Effects(Players.Of("P01", means.After, means.Before)));
        foreach (var measure in new[] { "difference", "hedges-g", "log-response-ratio" })
            Assert.Equal(there.Numbers("estimate")[there.Row(measure)], -back.Numbers("estimate")[back.Row(measure)], 9);
        Assert.Equal(there.Numbers("se")[there.Row("difference")], back.Numbers("se")[back.Row("difference")], 9);
    }, iter: 30);

    [Fact]
    public void AnotherUnitScalesADifferenceAndLeavesTheOthersAlone() => Players.Means.Sample(means =>
    {
        PlayedSwing[] metres = [.. Players.Of("P01", means.Before, means.After)];
        var feet = metres.Select(swing => swing with { Values = new() { ["club_head_speed"] = (double)swing.Values["club_head_speed"]! / 0.3048 } });
        var (one, other) = (Players.Effects(metres), Players.Effects(feet));
        foreach (var column in new[] { "estimate", "se", "ci_low", "ci_high" })
            Assert.Equal(one.Numbers(column)[one.Row("difference")] / 0.3048, other.Numbers(column)[other.Row("difference")], 6);
        foreach (var measure in new[] { "percent-change", "hedges-g", "log-response-ratio" })
            Assert.Equal(one.Numbers("estimate")[one.Row(measure)], other.Numbers("estimate")[other.Row(measure)], 7);
    }, iter: 30);

    [Fact]
    public void TheOrderOfRowsDoesNotMatter()
    {
        var swings = PlayedSwing.Swings(Players.Of("P01", [40, 41.3], [42, 43.1]));
        var noise = Players.Noise([.. Players.Of("P01", [40, 41.3], [42, 43.1]), .. Players.Others()]);
        var effects = Body.Run("effects", "effects", [swings, noise]).Text();
        for (var seed = 1; seed < 6; seed++)
            Assert.Equal(effects, Body.Run("effects", "effects", [swings.Shuffled(seed), noise.Shuffled(seed)]).Text());
    }
}
