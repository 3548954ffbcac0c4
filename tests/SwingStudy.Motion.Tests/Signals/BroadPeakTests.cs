using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Kinematics;
using SwingStudy.Motion.Signals;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Motion.Tests.Signals;

public class BroadPeakTests
{
    [Fact]
    public void TheTopOfACubicIsFoundExactlyAndNoTopBeyondTheSearch()
    {
        // d/dt (t³/3 − 0.01 t) vanishes at −0.1 (top) and 0.1.
        var axis = new TimeAxis(250, -0.2, 101);
        double[] values = [.. Enumerable.Range(0, axis.Count).Select(i => (Math.Pow(axis.TimeOf(i), 3) / 3) - (0.01 * axis.TimeOf(i)))];
        var (time, value) = BroadPeak.Highest(values, axis, -0.2, 0, 0.05)!.Value;
        Assert.Equal(-0.1, time, 1e-9);
        Assert.Equal(0.002 / 3, value, 1e-12);
        // Rising up to the end of the search: the last sample in it.
        Assert.Equal(-0.152, BroadPeak.Highest(values, axis, -0.2, -0.15, 0.05)!.Value.TimeS, 1e-9);
        Assert.Null(BroadPeak.Highest([double.NaN, double.NaN], new TimeAxis(100, 0, 2), 0, 1, 0.05));
    }

    /// <summary>Noise of marks moves the time of peak grip speed by half as much as it moves the vertex of three samples, and by less than the half of a frame.</summary>
    [Theory]
    [InlineData(200, 0.0005, 1.5)]
    [InlineData(240, 0.001, 2)]
    [InlineData(500, 0.0005, 1)]
    public void NoiseMovesItLessThanTheTopOfThreeSamples(double rate, double noise, double mostMs)
    {
        var (broad, narrow, count) = (0.0, 0.0, 0);
        foreach (var swing in new InventedSwing[] { new(), new() { TopS = -0.22 }, new() { TopS = -0.32 } })
        {
            var truth = InventedSwing.Greatest(t => InventedSwing.Speed(swing.Grip, t), swing.TopS, -0.001).Time;
            for (var seed = 1; seed <= 24; seed++)
            {
                var raw = InventedSwing.Seen(swing.Grip, rate, noise, seed, phaseS: seed / 24.0 / rate);
                var speeds = MovingFit.Before(raw, 0, 0.08, 3).Velocity.Lengths();
                broad += Math.Pow(1000 * (BroadPeak.Highest(speeds, raw.Axis, swing.TopS, 0, 0.05)!.Value.TimeS - truth), 2);
                narrow += Math.Pow(1000 * (raw.Axis.TimeOf(Span.Highest(speeds, raw.Axis, swing.TopS, 0)!.Value.Position) - truth), 2);
                count++;
            }
        }

        Assert.InRange(Math.Sqrt(broad / count), 0, mostMs);
        Assert.True(broad < 0.5 * narrow, $"squares of {broad} and {narrow}");
    }
}
