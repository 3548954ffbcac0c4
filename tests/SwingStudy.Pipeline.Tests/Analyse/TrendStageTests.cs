using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Analyse;

public sealed class TrendStageTests
{
    [Fact]
    public void SessionsAreThePointsOfTheSeries()
    {
        var trends = Trends(Players.Of("P01", [40, 41, 42], [44, 45, 46]));
        // By hand: each later session beats each earlier one (NAP 1); 9 better pairs less the 3 rising pairs of the baseline, over 9 (Tau-U 2/3).
        Assert.Equal(1, Value(trends, "non-overlap"), 9);
        Assert.Equal(6 / 9.0, Value(trends, "tau-u"), 9);
        Assert.Equal(1, Value(trends, "baseline-trend"), 9);
        Assert.Equal(1, Value(trends, "baseline-trend-median"), 9);
        // The line 40, 41, 42 goes on to 43 at the fourth session, which has 44; after that the slope stays.
        Assert.Equal(1, Value(trends, "level-change"), 9);
        Assert.Equal(0, Value(trends, "slope-change"), 9);
        // Within both phases 1 a session, and the middles lie 3 sessions apart: of the change of 4, 1 is left.
        Assert.Equal(1, Value(trends, "slope-within-phases"), 9);
        Assert.Equal(1, Value(trends, "change-beyond-trend"), 9);
        Assert.Equal("m/s", trends.Texts("unit")[Row(trends, "baseline-trend")]);
    }

    [Fact]
    public void OrderWithinSessionsIsSeenAcrossSwings()
    {
        var swings = Players.Of("P01", [40, 40, 40], [40, 40, 40]).Select(swing => swing with { Values = new() { ["club_head_speed"] = 40 - (0.3 * swing.Sequence) } });
        Assert.Equal(-0.3, Value(Trends(swings), "order-in-session"), 9);
    }

    [Fact]
    public void WhatFewSessionsDoNotSupportIsStoredWithItsReason()
    {
        var trends = Trends(Players.Of("P01", [40], [42]));
        Assert.Equal(double.NaN, Value(trends, "baseline-trend"));
        Assert.Contains("needs at least 3 sessions", trends.Texts("undefined")[Row(trends, "baseline-trend")], StringComparison.Ordinal);
        Assert.Contains("needs", trends.Texts("undefined")[Row(trends, "level-change")], StringComparison.Ordinal);
        Assert.Equal(1, Value(trends, "non-overlap"), 9);
    }

    private static RowSet Trends(IEnumerable<PlayedSwing> swings) => Analysis.Of(swings)["trends"];

    private static double Value(RowSet trends, string term) => trends.Numbers("estimate")[Row(trends, term)];

    private static int Row(RowSet trends, string term) => Enumerable.Range(0, trends.Count).Single(i =>
        trends.Texts("outcome")[i] == "club_head_speed" && trends.Texts("contrast")[i] == "with-cue" && trends.Texts("term")[i] == term);
}
