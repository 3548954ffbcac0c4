using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Motion.Tests.Forces;

public class ImpulseTests
{
    private const double Mass = 70;
    private const double G = 9.81;

    // A jump: the body's centre moves by known quintics from standing to take-off at 2.4 m/s.
    private static readonly Func<double, double> Height = Quintic.Chain(
        new Quintic(0, 0.4, (1.0, 0, 0), (0.75, 0, 12)), new Quintic(0.4, 0.7, (0.75, 0, 12), (1.15, 2.4, -9.81)));

    [Theory]
    [InlineData(240)]
    [InlineData(1000)]
    public void TheImpulseIsMassTimesTheChangeOfSpeed(double rate)
    {
        var axis = new TimeAxis(rate, -1, (int)(1.7 * rate) + 1);
        double[] net = [.. Enumerable.Range(0, axis.Count).Select(i => Mass * Acceleration(axis.TimeOf(i)))];
        // Newton's second law; trapezoids at these rates are good to a thousandth.
        Assert.Equal(Mass * 2.4, Span.Integral(net, axis, 0, 0.6999), 0.4);
        // Take-off speed v gives a height of v²/(2g): 0.2936 m for 2.4 m/s.
        var speed = Span.Integral(net, axis, 0, 0.6999) / Mass;
        Assert.Equal(0.2936, speed * speed / (2 * G), 0.002);
    }

    [Fact]
    public void FromStillToStillThereIsNoImpulse()
    {
        var height = new Quintic(0, 0.8, (1.0, 0, 0), (0.8, 0, 0));
        var axis = new TimeAxis(500, -0.5, 1001);
        double[] net = [.. Enumerable.Range(0, axis.Count).Select(i => Mass * Bend(height.At, axis.TimeOf(i)))];
        Assert.Equal(0, Span.Integral(net, axis, -0.4, 1.2), 3);
    }

    [Fact]
    public void AnIntegralReadsItsEndsBetweenSamples()
    {
        // f(t) = 2t from 0.05 to 0.35: 0.35² − 0.05² = 0.12, exact for straight lines.
        var axis = new TimeAxis(10, 0, 6);
        Assert.Equal(0.12, Span.Integral([0, 0.2, 0.4, 0.6, 0.8, 1.0], axis, 0.05, 0.35), 12);
        Assert.True(double.IsNaN(Span.Integral([0, 0.2, double.NaN, 0.6, 0.8, 1.0], axis, 0.05, 0.35)));
    }

    [Fact]
    public void TheSteepestLineOfARampIsItsSlope()
    {
        var axis = new TimeAxis(1000, 0, 300);
        double[] ramp = [.. Enumerable.Range(0, 300).Select(i => i < 100 ? 0 : i < 200 ? 7.5 * (i - 100) : 750)];
        Assert.Equal(7500, LoadingRate.Steepest(ramp, axis, 0, 0.299), 6);
        Assert.True(double.IsNaN(LoadingRate.Steepest(ramp, axis, 0, 0.005)));
    }

    [Fact]
    public void BodyWeightComesFromTheStillestStretch()
    {
        var axis = new TimeAxis(500, 0, 2000);
        var noise = new Noise(3);
        double[] vertical = [.. Enumerable.Range(0, 2000).Select(i => 700 + (noise.Next() * 0.9) + (i is > 300 and < 1200 ? 40 * Math.Sin(i / 30.0) : 0))];
        var still = QuietStanding.Stillest(vertical, axis, 1, 0, 4)!;
        Assert.Equal(700, still.WeightN, 0.2);
        Assert.True(still.FromS >= 2.4);
    }

    // Loads end at take-off; a moment before it stands for the end, where the quintics stop.
    private static double Acceleration(double time) => time < 0 ? 0 : Bend(Height, Math.Min(time, 0.6995));

    private static double Bend(Func<double, double> place, double time) => (place(time + 1e-4) - (2 * place(time)) + place(time - 1e-4)) / 1e-8;
}
