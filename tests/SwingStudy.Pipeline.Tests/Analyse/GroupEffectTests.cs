using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Analyse;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Statistics.Group;

namespace SwingStudy.Pipeline.Tests.Analyse;

public sealed class GroupEffectTests
{
    private static readonly PlayedSwing[] Swings =
    [
        .. Players.Of("P01", [40, 40.4, 39.8], [43, 43.2, 42.7]), .. Players.Of("P02", [38, 38.3, 37.8], [40.1, 40.3, 39.7]), .. Players.Of("P03", [41, 41.2, 40.7], [41.1, 41.3, 40.9]),
    ];

    [Fact]
    public void TheMeanIsThatOfRandomEffectsOverThePlayersEstimates()
    {
        var tables = Analysis.Of(Swings);
        var (effects, group) = (tables["effects"], tables["group_effects"]);
        int[] own = [.. Enumerable.Range(0, effects.Count).Where(i => effects.Texts("outcome")[i] == "club_head_speed" && effects.Texts("contrast")[i] == "with-cue" && effects.Texts("measure")[i] == "difference")];
        // The synthesis itself is checked against metafor in the tests of the statistics.
        var expected = MetaAnalysis.Of([.. own.Select(i => effects.Numbers("estimate")[i])], [.. own.Select(i => effects.Numbers("se")[i] * effects.Numbers("se")[i])])!;
        var row = Row(group, "difference");
        Assert.Equal(expected.KnappHartung.Value!.Value, group.Numbers("estimate")[row], 9);
        Assert.Equal(expected.PredictionKnappHartung.Low, group.Numbers("pi_low")[row], 9);
        Assert.Equal(expected.TauSquared.Value!.Value, group.Numbers("tau2")[row], 9);
        Assert.Equal(Math.Sqrt(expected.TauSquared.Value!.Value), group.Numbers("estimate")[Row(group, "individual-response-sd")], 9);
        Assert.Equal(100 * expected.ISquared, group.Numbers("i2")[row], 9);
        Assert.Equal((3L, true), (group.Integers("n")[row], group.Booleans("planned")[row]));
        Assert.Equal(2, group.Numbers("estimate")[Row(group, "players-supported")]);
    }

    [Fact]
    public void OnePlayerGivesNoMeanAndSaysWhy()
    {
        var group = Analysis.Of(Swings.Where(swing => swing.Participant == "P01"))["group_effects"];
        Assert.Contains("needs at least 2 players", group.Texts("undefined")[Row(group, "difference")], StringComparison.Ordinal);
    }

    [Fact]
    public void PlannedComparisonsOfOneRoleAreOneFamily()
    {
        // R 4: p.adjust(c(.01, .04, .03, .005), "holm").
        var adjusted = AdjustedP.Of("holm", [0.01, 0.04, null, 0.03, 0.005]).Select(p => p is { } value ? Math.Round(value, 12) : (double?)null);
        Assert.Equal([0.03, 0.06, null, 0.06, 0.02], adjusted);
        Assert.Equal([0.01, null], AdjustedP.Of("none", [0.01, null]));
        var group = Analysis.Of(Swings)["group_effects"];
        var row = Row(group, "difference");
        Assert.Equal(group.Numbers("p")[row], group.Numbers("p_adjusted")[row]);
        Assert.EndsWith("p adjusted: holm over 1", group.Texts("method")[row], StringComparison.Ordinal);
    }

    private static int Row(RowSet group, string measure) => Enumerable.Range(0, group.Count).Single(i =>
        group.Texts("outcome")[i] == "club_head_speed" && group.Texts("contrast")[i] == "with-cue" && group.Texts("measure")[i] == measure);
}
