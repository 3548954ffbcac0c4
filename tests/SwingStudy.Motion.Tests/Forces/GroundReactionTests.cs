using SwingStudy.Motion.Forces;
using SwingStudy.Motion.Geometry;

namespace SwingStudy.Motion.Tests.Forces;

public class GroundReactionTests
{
    // Worked by hand from M = r × F + (0, 0, T) in a frame with z up: F (30, -50, 800) N acts at (0.050, -0.080, 0) m with T = 12 N.m; the sensors'
    // origin is (0.001, -0.002, -0.045) m, so that M = (-60.15, -37.85, 11.89) N.m.
    private static readonly Rotation3D FromPlate = new(new(1, 0, 0), new(0, 0, -1), new(0, 1, 0));

    [Fact]
    public void TheHandWorkedPlateGivesBackItsCentreAndMoment()
    {
        var loads = new PlateLoads([30], [-50], [800], [-60.15], [-37.85], [11.89]).Turned(FromPlate);
        var reaction = GroundReaction.Of(loads, new PlatePose(FromPlate.Turn(new Vector3D(0.001, -0.002, -0.045)), 0.045), 20);
        Assert.Equal(0.050, reaction.CentreX[0], 12);
        Assert.Equal(0.080, reaction.CentreZ[0], 12);
        Assert.Equal(12.0, reaction.VerticalMoment[0], 10);
    }

    [Fact]
    public void ActionAndReactionHaveOneCentre()
    {
        var onPlate = new PlateLoads([-30], [50], [-800], [60.15], [37.85], [-11.89]).Turned(FromPlate);
        var reaction = GroundReaction.Of(onPlate.Opposite(), new PlatePose(FromPlate.Turn(new Vector3D(0.001, -0.002, -0.045)), 0.045), 20);
        Assert.Equal(0.050, reaction.CentreX[0], 12);
        Assert.Equal(12.0, reaction.VerticalMoment[0], 10);
    }

    [Fact]
    public void AMatRaisesTheGround()
    {
        var pose = PlatePose.OfTop(new Vector3D(0.2, 0, -0.8), 0.04, 0.02);
        var loads = Loads(pose, new Vector3D(50, 700, -30), new Vector3D(0.25, 0.02, -0.75), 5);
        var reaction = GroundReaction.Of(loads, pose, 20);
        Assert.Equal((0.25, -0.75, 5.0), (Math.Round(reaction.CentreX[0], 9), Math.Round(reaction.CentreZ[0], 9), Math.Round(reaction.VerticalMoment[0], 9)));
    }

    [Fact]
    public void TwoPlatesAddAsTheirCentresAndLeversSay()
    {
        PlatePose lead = PlatePose.OfTop(new Vector3D(0.235, 0, -0.8), 0.041), trail = PlatePose.OfTop(new Vector3D(-0.235, 0, -0.8), 0.041);
        Vector3D f1 = new(-40, 500, 60), f2 = new(90, 300, -70), p1 = new(0.22, 0, -0.78), p2 = new(-0.25, 0, -0.83);
        var sum = GroundReaction.Of([(Loads(lead, f1, p1, 8), lead), (Loads(trail, f2, p2, 6), trail)], 20);
        var centre = ((500 * p1) + (300 * p2)) / 800;
        var moment = 8 + 6 + (p1 - centre).Cross(f1).Y + (p2 - centre).Cross(f2).Y;
        Assert.Equal(800, sum.ForceY[0], 9);
        Assert.Equal(centre.X, sum.CentreX[0], 9);
        Assert.Equal(centre.Z, sum.CentreZ[0], 9);
        Assert.Equal(moment, sum.VerticalMoment[0], 9);
    }

    [Fact]
    public void CentreAndMomentAreBlankWithoutLoad()
    {
        var pose = PlatePose.OfTop(default, 0.04);
        var reaction = GroundReaction.Of(Loads(pose, new Vector3D(1, 39, 1), default, 0), pose, GroundReaction.LeastForce(800));
        Assert.True(double.IsNaN(reaction.CentreX[0]) && double.IsNaN(reaction.VerticalMoment[0]));
        Assert.Equal(39, reaction.ForceY[0]);
        Assert.Equal(20, GroundReaction.LeastForce(300));
    }

    [Fact]
    public void CornersGiveCentreAndTurn()
    {
        // A plate whose x axis points to the target, and one turned half way round; z up in both.
        Vector3D[] corners = [new(0.4, 0, -1.1), new(0, 0, -1.1), new(0, 0, -0.5), new(0.4, 0, -0.5)];
        var (pose, turn) = PlatePose.OfCorners(corners, 0.05);
        Assert.Equal(new Vector3D(0.2, -0.05, -0.8), pose.Origin);
        Assert.Equal(new Vector3D(0, 1, 0), turn.Turn(new Vector3D(0, 0, 1)));
        Assert.Equal(new Vector3D(1, 0, 0), turn.Turn(new Vector3D(1, 0, 0)));
        var (_, turned) = PlatePose.OfCorners([corners[2], corners[3], corners[0], corners[1]], 0.05);
        Assert.Equal(new Vector3D(-1, 0, 0), turned.Turn(new Vector3D(1, 0, 0)));
    }

    [Fact]
    public void AZeroUnderAMovingPersonIsRefused()
    {
        double[] none = [0, 0, 0, 0], empty = [3.1, 3.3, 2.9, 3.1], steppedOn = [3.1, 3.3, 500, 620];
        Assert.Equal(3.1, PlateZero.Of(new PlateLoads(none, empty, none, none, none, none))!.ForceY, 12);
        Assert.Null(PlateZero.Of(new PlateLoads(none, steppedOn, none, none, none, none)));
    }

    /// <summary>What a plate would read of a force at a point with a free moment.</summary>
    private static PlateLoads Loads(PlatePose pose, Vector3D force, Vector3D at, double free)
    {
        var moment = (at - pose.Origin).Cross(force) + (free * Vector3D.Up);
        return new PlateLoads([force.X], [force.Y], [force.Z], [moment.X], [moment.Y], [moment.Z]);
    }
}
