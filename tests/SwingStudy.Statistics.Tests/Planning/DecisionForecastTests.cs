using SwingStudy.Statistics.Planning;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.Planning;

public class DecisionForecastTests
{
    private static readonly NoiseModel Noise = new() { Session = 0.5, Swing = 0.9 };

    /// <summary>
    /// 1.96·√(2(0.5²/m + 0.9²/(mk))) for m sessions of k swings in either phase: worked by hand, 1.595, 1.128, 0.921, 0.863.
    /// </summary>
    [Theory]
    [InlineData(1, 10, 1.595)]
    [InlineData(2, 10, 1.128)]
    [InlineData(3, 10, 0.921)]
    [InlineData(3, 20, 0.863)]
    public void TheHalfWidthIsTheSmallestDetectableChangeOfEqualPhases(int sessions, int swings, double expected)
    {
        var phase = new PhaseCounts(sessions, sessions * swings);
        Assert.Equal(expected, DecisionForecast.Of(0, 0, Noise, phase, phase, swings).HalfWidth, 3);
    }

    [Fact]
    public void MoreSwingsOfOneDayCannotBeatTheFloorOfThatDay()
    {
        var forecast = DecisionForecast.Of(1.1, 0, Noise, new PhaseCounts(3, 60), new PhaseCounts(1, 10), 20);
        Assert.False(forecast.IsDecided);
        Assert.Null(forecast.MoreSwings);
        Assert.Equal(1, forecast.MoreSessions);
        Assert.True(forecast.Floor < forecast.HalfWidth);
    }

    [Fact]
    public void TheSwingsForetoldAreTheFewestThatDecide()
    {
        var before = new PhaseCounts(6, 120);
        var after = new PhaseCounts(4, 12);
        var forecast = DecisionForecast.Of(0.95, 0.2, Noise, before, after, 20);
        var more = forecast.MoreSwings!.Value;
        Assert.True(more > 0);
        Assert.True(DecisionForecast.Of(0.95, 0.2, Noise, before, after with { Swings = 12 + more }, 20).IsDecided);
        Assert.False(DecisionForecast.Of(0.95, 0.2, Noise, before, after with { Swings = 12 + more - 1 }, 20).IsDecided);
    }

    [Fact]
    public void ADecidedChangeNeedsNoMoreAndAChangeOnTheLimitIsNeverDecided()
    {
        var phase = new PhaseCounts(3, 60);
        var decided = DecisionForecast.Of(3, 0.5, Noise, phase, phase, 20);
        Assert.True(decided.IsDecided);
        Assert.Equal((0, 0), (decided.MoreSwings, decided.MoreSessions));
        var never = DecisionForecast.Of(0.5, 0.5, Noise, phase, phase, 20);
        Assert.Null(never.MoreSwings);
        Assert.Null(never.MoreSessions);
        Near.Equal(decided.HalfWidth, DecisionForecast.Of(3 + 1e9, 0.5 + 1e9, Noise, phase, phase, 20).HalfWidth);
        Assert.Throws<ArgumentException>(() => DecisionForecast.Of(1, 0, Noise, new PhaseCounts(0, 0), phase, 20));
        Assert.Throws<ArgumentException>(() => DecisionForecast.Of(double.NaN, 0, Noise, phase, phase, 20));
    }
}
