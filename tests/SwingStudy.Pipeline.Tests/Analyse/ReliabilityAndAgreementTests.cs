using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Analyse;

public sealed class ReliabilityAndAgreementTests
{
    [Fact]
    public void TheRatingsOfShroutAndFleissGiveTheirCoefficient()
    {
        // Shrout and Fleiss (1979), table 2 and 4: six targets, four judges, ICC(2,1) = 0.29. Each rating is one session with one swing.
        double[][] ratings = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]];
        var swings = ratings.SelectMany((target, i) => target.SelectMany((rating, day) => PlayedSwing.Of($"P0{i + 1}-{day + 1}", "baseline", "face_angle", rating)));

        var rows = Body.Run("reliability", "reliability", [PlayedSwing.Swings(swings), Players.Noise(swings)]);

        var row = Row(rows, "face_angle", "session-mean", "icc-2-1");
        Assert.Equal(0.29, rows.Numbers("estimate")[row], 2);
        Assert.Equal((6L, 4L), (rows.Integers("n")[row], rows.Integers("k")[row]));
    }

    [Fact]
    public void TheBaselineAloneCountsAndPooledNoiseStandsBeside()
    {
        PlayedSwing[] swings = [.. Players.Others()];
        var rows = Body.Run("reliability", "reliability", [PlayedSwing.Swings(swings), Players.Noise(swings)]);
        Assert.Equal(3L, rows.Integers("k")[Row(rows, "club_head_speed", "session-mean", "icc-2-1")]);
        // Swings lie at 0, ±0.2, ±0.4 around each session mean: SD √(0.4/4) = 0.3162.
        Assert.Equal(0.3162, rows.Numbers("estimate")[Row(rows, "club_head_speed", "swing", "swing-sd")], 4);
        Assert.Equal(4 * 6 * 4, rows.Numbers("df")[Row(rows, "club_head_speed", "swing", "swing-sd")]);
        var sem = rows.Numbers("estimate")[Row(rows, "club_head_speed", "session-mean", "sem")];
        Assert.Equal(2.7718 * sem, rows.Numbers("estimate")[Row(rows, "club_head_speed", "session-mean", "smallest-detectable-change")], 4);
    }

    [Fact]
    public void OnePlayerGivesNoReliabilityAndSaysWhy()
    {
        PlayedSwing[] swings = [.. Players.Of("P01", [40, 41], [])];
        var rows = Body.Run("reliability", "reliability", [PlayedSwing.Swings(swings), Players.Noise(swings)]);
        Assert.Contains("needs two players", rows.Texts("undefined")[Row(rows, "club_head_speed", "session-mean", "icc-2-1")], StringComparison.Ordinal);
    }

    [Fact]
    public void TwoSourcesOfOneVariableAreComparedSwingBySwing()
    {
        double[] differences = [0.5, 0.3, 0.1, 0.7, 0.4];
        CaptureRow[] strike = [.. CaptureRow.At("strike", 1, 2, 3, 4, 5)], plates = [.. CaptureRow.At("plates", 1, 2, 3, 4, 5)];
        var links = new RowSetBuilder(StudyTables.Links);
        for (var i = 0; i < differences.Length; i++)
        {
            (strike[i].Values["club_head_speed"], plates[i].Values["club_head_speed"]) = (40.0 + i + differences[i], 40.0 + i);
            foreach (var capture in new[] { strike[i], plates[i] })
                links.Add(("capture_id", capture.Id), ("swing_id", $"s{i}"), ("participant", "P01"), ("method", "time"));
        }

        var rows = Body.Run("agreement", "agreement", [Some.Captures([.. strike, .. plates]), links.Build()]);

        Assert.Equal(1, rows.Count);
        Assert.Equal(("strike", "plates", 5L), (rows.Texts("source_a")[0], rows.Texts("source_b")[0], rows.Integers("n")[0]));
        // Mean 0.4, SD √(0.2/4) = 0.223607; limits 0.4 ± 1.959964 · 0.223607 (Bland and Altman 1986).
        Assert.Equal(0.4, rows.Numbers("bias")[0], 9);
        Assert.Equal(0.4 + (1.959964 * 0.223607), rows.Numbers("loa_high")[0], 5);
    }

    private static int Row(RowSet rows, string outcome, string level, string coefficient) => Enumerable.Range(0, rows.Count).Single(i =>
        rows.Texts("outcome")[i] == outcome && rows.Texts("level")[i] == level && rows.Texts("coefficient")[i] == coefficient);
}
