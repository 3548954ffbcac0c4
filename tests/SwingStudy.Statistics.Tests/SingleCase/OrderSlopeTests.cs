using SwingStudy.Statistics.SingleCase;
using SwingStudy.Statistics.Tests.Support;

namespace SwingStudy.Statistics.Tests.SingleCase;

public class OrderSlopeTests
{
    private static readonly double[][] Sessions = [[40, 40.3, 40.9, 40.8, 41.4], [41, 41.1, 41.7, 41.5], [39, 39.6, 39.5, 40.2, 40.1, 40.8]];

    [Fact]
    public void ItIsTheMeanOfTheSlopesOfSessionsWithTheirTInterval()
    {
        // Invented values; R 4: slopes by stats::lm in each session, then stats::t.test of the three.
        var slope = Of(Sessions);
        Near.Equal(0.2866667, slope.Value, 1e-6);
        Near.Equal(0.03844188, slope.StandardError, 1e-6);
        Near.Equal(0.1212646, slope.Interval!.Value.Low, 1e-6);
        Near.Equal(0.4520687, slope.Interval.Value.High, 1e-6);
        Near.Equal(0.01751172, slope.P, 1e-6);
    }

    [Fact]
    public void LevelsOfSessionsDoNotMatter() =>
        Near.Equal(Of(Sessions).Value, Of([Sessions[0], [.. Sessions[1].Select(value => value + 7)], Sessions[2]]).Value, 1e-9);

    [Fact]
    public void OneSessionHasNoErrorAndTwoSwingsNoSlope()
    {
        Assert.Null(Of([Sessions[0]]).StandardError);
        Assert.NotNull(Of([[40, 41], [42, 43]]).Undefined);
    }

    private static Statistics.Results.Estimate Of(double[][] sessions) => OrderSlope.Of(
        [.. sessions.SelectMany(session => session.Select((_, i) => i + 1.0))],
        [.. sessions.SelectMany(session => session)],
        [.. sessions.SelectMany((session, s) => session.Select(_ => s))]);
}
