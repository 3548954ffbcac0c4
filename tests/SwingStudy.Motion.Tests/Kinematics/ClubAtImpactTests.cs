using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Kinematics;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Motion.Tests.Kinematics;

/// <summary>The head at impact in invented swings whose velocity is known in closed form, with impact between samples.</summary>
public class ClubAtImpactTests
{
    private const int Draws = 24;

    private static readonly InventedSwing[] Swings = [new(), new() { TopS = -0.22 }, new() { TopS = -0.32, Side = -1 }];

    [Theory]
    // Largest root mean squares: noise that the slope of a restrained polynomial over 0.1 s lets through, and at most 0.4 % by which the turn bends otherwise than it.
    [InlineData(100, 0.0002, 0.7, 0.6)]
    [InlineData(100, 0.001, 1.6, 1)]
    [InlineData(200, 0.0006, 0.75, 0.5)]
    [InlineData(240, 0.0003, 0.5, 0.4)]
    [InlineData(240, 0.001, 1, 0.7)]
    [InlineData(500, 0.0002, 0.35, 0.3)]
    [InlineData(500, 0.002, 1.2, 0.9)]
    public void SpeedAndDirectionAreThoseBeforeTheBlow(double rate, double noise, double speedPercent, double degrees)
    {
        var (speeds, angles) = (0.0, 0.0);
        foreach (var swing in Swings)
        {
            var truth = Velocity(swing.Head);
            for (var seed = 1; seed <= Draws; seed++)
            {
                var found = Found(swing.Grip, swing.Head, rate, noise, seed)!;
                speeds += Math.Pow(100 * ((found.Velocity.Length / truth.Length) - 1), 2);
                angles += Math.Pow(Attack(found.Velocity) - Attack(truth), 2);
            }
        }

        Assert.InRange(Math.Sqrt(speeds / (Draws * Swings.Length)), 0, speedPercent);
        Assert.InRange(Math.Sqrt(angles / (Draws * Swings.Length)), 0, degrees);
    }

    [Fact]
    public void WithoutNoiseNearlyNothingIsLeft()
    {
        foreach (var swing in Swings)
        {
            var found = Found(swing.Grip, swing.Head, 500, 0, 1)!;
            Assert.Equal(0, (found.Velocity - Velocity(swing.Head)).Length, 0.1);
            Assert.Equal(0, (found.Place - swing.Head(0)).Length, 0.0005);
        }
    }

    [Fact]
    public void AShaftThatBendsIsFollowedByItsHead()
    {
        // The head lags by two degrees and leads by two at impact, within 60 ms: that adds about one metre a second.
        var swing = new InventedSwing();
        var normal = (swing.Head(-0.02) - swing.Grip(-0.02)).Cross(swing.Head(0) - swing.Grip(0));
        Vector3D Bent(double t) => swing.Grip(t) + Rotation3D.About(normal, 0.035 * Math.Tanh((t + 0.025) / 0.03)).Turn(swing.Head(t) - swing.Grip(t));
        var truth = Velocity(Bent);
        Assert.True(Math.Abs(truth.Length - Velocity(swing.Head).Length) > 0.5);
        Assert.Equal(truth.Length, Found(swing.Grip, Bent, 500, 0.0002, 3)!.Velocity.Length, 0.01 * truth.Length);
    }

    [Fact]
    public void TheScatterThatItStatesIsTheScatterThatItHas()
    {
        var swing = new InventedSwing();
        double[] speeds = [.. Enumerable.Range(1, 60).Select(seed => Found(swing.Grip, swing.Head, 240, 0.001, seed)!.Velocity.Length)];
        var mean = speeds.Average();
        var scatter = Math.Sqrt(speeds.Sum(speed => (speed - mean) * (speed - mean)) / (speeds.Length - 1));
        var stated = Enumerable.Range(1, 60).Average(seed => Found(swing.Grip, swing.Head, 240, 0.001, seed)!.SpeedScatterMps);
        // The prior counts as scatter too, which a single swing does not show: the stated one is an upper limit, and not a wild one.
        Assert.InRange(scatter / stated, 0.3, 1.25);
    }

    [Theory]
    [InlineData(240, 0.0003, 0.6)]
    [InlineData(240, 0.001, 1.2)]
    [InlineData(1000, 0.001, 0.9)]
    public void TurnAndSpeedShortlyBeforeImpactAreThoseOfThatMoment(double rate, double noise, double percent)
    {
        var (turns, speeds, count) = (0.0, 0.0, 0);
        foreach (var swing in Swings)
        {
            double[] moments = [-0.03, -0.02, -0.01, 0];
            for (var seed = 1; seed <= Draws; seed++)
            {
                var phase = seed / (double)Draws / rate;
                var found = ClubAtImpact.At(InventedSwing.Seen(swing.Grip, rate, noise, seed, phaseS: phase), InventedSwing.Seen(swing.Head, rate, noise, 1000 + seed, phaseS: phase), moments, 0);
                foreach (var (club, time) in found.Zip(moments))
                {
                    var turn = Angles.Included(swing.Head(time) - swing.Grip(time), swing.Head(time - 1e-5) - swing.Grip(time - 1e-5)) / 1e-5 / Angles.DegreesPerRadian;
                    turns += Math.Pow(100 * ((club.TurnRadPerS / turn) - 1), 2);
                    speeds += Math.Pow(100 * ((club.Velocity.Length / InventedSwing.Speed(swing.Head, time)) - 1), 2);
                    count++;
                }
            }
        }

        Assert.InRange(Math.Sqrt(turns / count), 0, percent);
        Assert.InRange(Math.Sqrt(speeds / count), 0, percent);
    }

    [Fact]
    public void TooFewSamplesOrNoneNearImpactGiveNothing()
    {
        var swing = new InventedSwing();
        var (hands, head) = (InventedSwing.Seen(swing.Grip, 240, 0, 1), InventedSwing.Seen(swing.Head, 240, 0, 2));
        Assert.Null(ClubAtImpact.Before(hands, head.Map(values => Without(values, head.Axis, -0.02, 0.1)), 0));
        Assert.Null(ClubAtImpact.Before(hands, head.Map(values => Without(values, head.Axis, -0.2, -0.015)), 0));
        // A gap inside leaves enough.
        Assert.NotNull(ClubAtImpact.Before(hands, head.Map(values => Without(values, head.Axis, -0.04, -0.02)), 0));
    }

    private static ClubAtImpact? Found(Func<double, Vector3D> grip, Func<double, Vector3D> head, double rate, double noise, int seed)
    {
        var phase = seed / (double)Draws / rate;
        return ClubAtImpact.Before(InventedSwing.Seen(grip, rate, noise, seed, phaseS: phase), InventedSwing.Seen(head, rate, noise, 1000 + seed, phaseS: phase), 0);
    }

    private static double[] Without(double[] values, TimeAxis axis, double fromS, double toS) =>
        [.. values.Select((x, i) => axis.TimeOf(i) > fromS && axis.TimeOf(i) < toS ? double.NaN : x)];

    private static Vector3D Velocity(Func<double, Vector3D> point) => 1e6 * (point(0) - point(-1e-6));

    private static double Attack(Vector3D v) => Angles.DegreesPerRadian * Math.Atan2(v.Y, Math.Sqrt((v.X * v.X) + (v.Z * v.Z)));
}
