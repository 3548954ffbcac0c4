using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Tests.Signals;

public class EqualTimeTests
{
    private static readonly double[] Line = [.. Enumerable.Range(0, 51).Select(i => 2 + (0.5 * i))];

    [Fact]
    public void AStraightCurveIsReadBetweenItsSamples()
    {
        // 100 Hz from −0.3 s: 2 + 50 (t + 0.3).
        var points = EqualTime.Read(Line, 100, -0.3, -0.215, 0.005, 9);
        Assert.Equal(Enumerable.Range(0, 9).Select(i => 2 + (50 * (0.085 + (0.005 * i)))), points, (a, b) => Math.Abs(a - b) < 1e-12);
    }

    [Fact]
    public void BeyondTheCurveAndInGapsThereIsNothing()
    {
        double[] gap = [.. Line];
        gap[20] = double.NaN;
        var points = EqualTime.Read(gap, 100, 0, -0.01, 0.005, 110);
        Assert.Equal([0, 1], Enumerable.Range(0, 10).Where(i => double.IsNaN(points[i])));
        Assert.Equal([41, 42, 43], Enumerable.Range(10, 50).Where(i => double.IsNaN(points[i])));
        Assert.Equal(103, Enumerable.Range(60, 50).First(i => double.IsNaN(points[i])));
    }

    [Fact]
    public void TwoSamplesAreNoCurve() => Assert.All(EqualTime.Read([1, 2], 100, 0, 0, 0.005, 3), point => Assert.Equal(double.NaN, point));
}
