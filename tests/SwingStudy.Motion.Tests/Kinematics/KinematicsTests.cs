using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Kinematics;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Motion.Tests.Kinematics;

public class KinematicsTests
{
    [Fact]
    public void CardanAnglesComeBackAndTheHelicalAngleIsKnown()
    {
        // Angles 0.7, 0.3, -0.4 rad about Z, X, Y: helical angle 46.004 degrees, recomputed for this test from the trace.
        var turn = Rotation3D.About(new(0, 0, 1), 0.7).After(Rotation3D.About(new(1, 0, 0), 0.3)).After(Rotation3D.About(new(0, 1, 0), -0.4));
        var (flexion, abduction, axial) = turn.Cardan;
        Assert.Equal(0.7, flexion, 12);
        Assert.Equal(0.3, abduction, 12);
        Assert.Equal(-0.4, axial, 12);
        Assert.Equal(46.004, turn.HelicalAngle * 180 / Math.PI, 3);
    }

    [Fact]
    public void TheAxialTurnIsKeptApartFromBending()
    {
        var turn = Rotation3D.About(Vector3D.Up, 0.9).After(Rotation3D.About(new(1, 0, 0), -0.5)).After(Rotation3D.About(new(0, 0, 1), 0.2));
        Assert.Equal(0.9, turn.AxialTurn, 12);
    }

    [Theory]
    [InlineData(1, 0, 0, 1, 0, 0, 0)]
    [InlineData(1, 0, 0, -1, 0, 0, 180)]
    [InlineData(1, 0, 0, 1, 1e-9, 0, 5.729577951308232e-8)]
    [InlineData(0, 2, 0, 0, 1, 1, 45)]
    public void IncludedAnglesAreExactWhereTheArcCosineIsNot(double ax, double ay, double az, double bx, double by, double bz, double degrees) =>
        Assert.Equal(degrees, Angles.Included(new(ax, ay, az), new(bx, by, bz)), 1e-12);

    [Fact]
    public void AStraightKneeAndAStraightArmAndShaft()
    {
        Assert.Equal(0, Angles.Flexion(new(0, 1, 0), new(0, 0.5, 0), new(0, 0, 0)), 9);
        Assert.Equal(90, Angles.Flexion(new(0, 1, 0), new(0, 0.5, 0), new(0.5, 0.5, 0)), 9);
        Assert.Equal(180, Angles.ForearmShaft(new(0, 1.2, 0), new(0, 1, 0), new(0, 0.9, 0), new(0, 0, 0)), 9);
    }

    [Fact]
    public void ARigidBodyThatTurnsAtAKnownRateTurnsAtThatRate()
    {
        // 3 rad/s about a slanting axis; the central difference of a turn by 3/fs a sample gives sin(3/fs) fs, which is taken into account.
        var axis = new Vector3D(1, 2, -1);
        var time = new TimeAxis(200, 0, 50);
        var body = new SegmentAxes([.. Enumerable.Range(0, 50).Select(i => Rotation3D.About(axis, 3 * time.TimeOf(i)))], time);
        var rate = body.AngularVelocity();
        var expected = Math.Sin(3.0 / 200) * 200 * axis.Direction;
        for (var i = 1; i < 49; i++)
            Assert.Equal(0, (rate[i] - expected).Length, 9);
        Assert.True(rate[0].IsMissing);
    }

    [Fact]
    public void APendulumHasTheSpeedOfItsAngle()
    {
        // θ(t) = 0.8 sin(5 t), length 1.1 m: speed = 1.1 · 0.8 · 5 |cos 5t|, angular velocity of the rod 4 cos 5t.
        static Vector3D Bob(double t) => new(1.1 * Math.Sin(0.8 * Math.Sin(5 * t)), -1.1 * Math.Cos(0.8 * Math.Sin(5 * t)), 0);
        var seen = InventedSwing.Seen(Bob, 500, 0);
        var velocity = seen.Velocity();
        var rod = SegmentAxes.OfLine(seen, velocity);
        // A central difference errs by h²/6 of the third derivative, here (1/500)²/6 · 4.4 · (25 + 3 · 16) = 0.0002 at most; 0.002 leaves room for the line between samples.
        foreach (var t in new[] { -1.0, -0.3, 0.0, 0.4 })
        {
            Assert.Equal(Math.Abs(4.4 * Math.Cos(5 * t)), velocity.At(t).Length, 0.002);
            Assert.Equal(4 * Math.Cos(5 * t), rod.At(t).Z, 0.002);
        }
    }

    [Theory]
    // The end slope of a fifth-degree fit over 50 ms scatters by 0.5 % at 240 Hz and 0.3 mm, by 0.8 % at 1000 Hz and 1 mm: three and a half of these are allowed in 20 draws.
    [InlineData(240, 0.0003, 0.018)]
    [InlineData(500, 0.0003, 0.012)]
    [InlineData(1000, 0.001, 0.027)]
    [InlineData(1000, 0.0002, 0.01)]
    public void ClubSpeedAtImpactIsThatBeforeTheBlow(double rate, double noise, double share)
    {
        var swing = new InventedSwing();
        var expected = InventedSwing.Speed(swing.Head, 0);
        Assert.InRange(expected, 35, 50);
        for (var seed = 1; seed <= 20; seed++)
        {
            var seen = InventedSwing.Seen(swing.Head, rate, noise, seed, phaseS: seed / 20.0 / rate);
            Assert.InRange(MovingFit.Before(seen, 0, 0.05, 5).VelocityAtImpact.Length / expected, 1 - share, 1 + share);
        }
    }

    [Theory]
    // The middle slope of a cubic over 80 ms scatters by σ √(75/N)/W: 0.007 m/s at 240 Hz and 0.3 mm, 0.024 m/s at 1000 Hz and 2 mm. Four of these are allowed, and
    // 0.01 m/s for what a cubic rounds off. Its second derivative scatters by σ √(720/N)/W²: 0.27 and 0.93 m/s², over a bend of the speed of some 400 m/s³ at
    // the peak 0.7 and 2.3 ms; four of these are allowed in time.
    [InlineData(240, 0.0003, 0.04, 0.003)]
    [InlineData(1000, 0.002, 0.11, 0.0095)]
    public void TheSpeedOfTheGripIsFoundWithItsTime(double rate, double noise, double speedTolerance, double timeTolerance)
    {
        var swing = new InventedSwing();
        var (time, value) = InventedSwing.Greatest(t => InventedSwing.Speed(swing.Grip, t), -0.27, -0.001);
        for (var seed = 1; seed <= 10; seed++)
        {
            var speeds = MovingFit.Before(InventedSwing.Seen(swing.Grip, rate, noise, seed), 0, 0.08, 3).Velocity;
            var peak = Span.Highest(speeds.Lengths(), speeds.Axis, -0.27, 0)!.Value;
            Assert.Equal(value, peak.Value, speedTolerance);
            Assert.Equal(time, speeds.Axis.TimeOf(peak.Position), timeTolerance);
        }
    }

    [Theory]
    [InlineData(0.0005)]
    [InlineData(0)]
    public void TurnsAreThoseOfTheSegments(double noise)
    {
        var swing = new InventedSwing();
        var pelvis = SegmentAxes.Pelvis(
            InventedSwing.Seen(t => swing.Pelvis(t, 0.1, 0.12), 240, noise, 1), InventedSwing.Seen(t => swing.Pelvis(t, 0.1, -0.12), 240, noise, 2),
            InventedSwing.Seen(t => swing.Pelvis(t, -0.1, 0), 240, noise, 3));
        var turn = pelvis.TurnSince(-1.5, -1.2);
        // Two marks 0.24 m apart with 0.5 mm of noise scatter a turn by 0.5 √2 / 240 = 0.17 degrees; three and a half of these are allowed. Without noise what is left is the
        // line between samples: acceleration h²/8, here 20 rad/s² (1/240)²/8 = 0.003 degrees, more where the turn of the pelvis changes.
        Assert.Equal(-swing.PelvisTurn(-0.27), Span.At(turn, pelvis.Axis, -0.27), noise == 0 ? 0.02 : 0.6);
        Assert.Equal(-swing.PelvisTurn(0.2), Span.At(turn, pelvis.Axis, 0.2), noise == 0 ? 0.02 : 0.6);
    }

    [Fact]
    public void OrderIsReadFromPeaksThatCanBeToldApart()
    {
        Assert.Equal("PTAC", PeakOrder.Of([('P', -0.09), ('T', -0.07), ('A', -0.05), ('C', 0)], 0.004));
        Assert.Equal("TPAC", PeakOrder.Of([('P', -0.07), ('T', -0.09), ('A', -0.05), ('C', 0)], 0.004));
        Assert.Equal(PeakOrder.Unresolved, PeakOrder.Of([('P', -0.09), ('T', -0.086), ('A', -0.05), ('C', 0)], 0.004));
        Assert.Null(PeakOrder.Of([('P', double.NaN), ('T', -0.086)], 0.004));
    }
}
