using SwingStudy.App.Demo.Model;

namespace SwingStudy.App.Tests.Demo.Model;

/// <summary>What the swing model brings about by itself. Trade facts are common practice, no source.</summary>
public class SwingModelTests
{
    private const double MilesAnHour = 0.44704;
    private const double Inch = 25.4;

    private static readonly SwingStyle Strong = new(new(80, 1.80), Club.MidIron, new(), new());
    private static readonly SwingStyle Early = Strong with { Hands = Strong.Hands with { ReleaseTime = -0.06 } };

    private static readonly SwingModel StrongSwing = new(Strong);
    private static readonly IReadOnlyDictionary<string, double> StrongTruth = SwingTruth.Of(StrongSwing);
    private static readonly IReadOnlyDictionary<string, double> EarlyTruth = SwingTruth.Of(new SwingModel(Early));

    /// <summary>Common practice, no source.</summary>
    [Fact]
    public void AStrongPlayerWithAMidIronPeaksAtTwentyTwoMilesAnHourOfGripSpeedAndReachesNinetyFive()
    {
        Assert.Equal(22, StrongTruth["grip_speed_peak"] / MilesAnHour, 0.5);
        Assert.InRange(StrongTruth["grip_speed_peak_before_impact"] / 1000, 0.4 * StrongTruth["downswing_time"], StrongTruth["downswing_time"]);
        Assert.Equal(1, StrongTruth["angle_lost_before_grip_peak"], 1.0);
        Assert.Equal(95, StrongTruth["club_head_speed"] / MilesAnHour, 1.0);
    }

    /// <summary>Common practice, no source: the same hands and wrists, only the release begins earlier.</summary>
    [Fact]
    public void TheSameHandsWithAnEarlyReleaseReachEightyEight()
    {
        Assert.Equal(StrongTruth["grip_speed_peak"], EarlyTruth["grip_speed_peak"], 0.05);
        Assert.Equal(38, EarlyTruth["angle_lost_before_grip_peak"], 2.0);
        Assert.Equal(88, EarlyTruth["club_head_speed"] / MilesAnHour, 1.0);
    }

    /// <summary>Common practice, no source.</summary>
    [Fact]
    public void VerticalForceFallsBelowBodyWeightInTheBackswingAndPeaksClearlyBeforeImpact()
    {
        Assert.Equal(1.88, StrongTruth["vertical_peak_total"], 0.01);
        Assert.InRange(StrongTruth["vertical_peak_total_time"], -200, -60);
        Assert.InRange(StrongTruth["unweight_min_total"], 0.5, 0.95);
        Assert.True(StrongTruth["unweight_min_time"] < 1000 * StrongSwing.Top);
        Assert.True(StrongSwing.VerticalForce(StrongSwing.Top - 0.1) < 1);
    }

    /// <summary>Common practice, no source.</summary>
    [Fact]
    public void ThePelvisIsAboutTwoInchesLowerAroundTopAndTwoInchesHigherAtImpact()
    {
        Assert.Equal(-2, StrongTruth["pelvis_drop"] / Inch, 0.5);
        Assert.Equal(1000 * StrongSwing.Top, StrongTruth["pelvis_low_time"], 100.0);
        Assert.Equal(2, 1000 * (StrongSwing.PelvisHeight(0) - StrongSwing.PelvisHeight(StrongSwing.Start)) / Inch, 0.6);
    }

    /// <summary>Common practice, no source.</summary>
    [Fact]
    public void HorizontalRotationalAndVerticalPeaksComeInThatOrder()
    {
        Assert.True(StrongTruth["target_peak_total_time"] + 20 < StrongTruth["pivot_moment_peak_time"]);
        Assert.True(StrongTruth["pivot_moment_peak_time"] + 20 < StrongTruth["vertical_peak_total_time"]);
    }

    [Fact]
    public void AnEarlierPushAloneMakesTheClubFaster()
    {
        var later = SwingTruth.Of(new SwingModel(Strong with { Feet = Strong.Feet.Shifted(0.04) }));

        Assert.InRange(StrongTruth["vertical_peak_total_time"] - later["vertical_peak_total_time"], -45, -30);
        Assert.Equal(StrongTruth["vertical_peak_total"], later["vertical_peak_total"], 0.03);
        Assert.InRange(StrongTruth["club_head_speed"] - later["club_head_speed"], 0.4, 1.5);
    }

    [Fact]
    public void VerticalForceIsMassTimesGravityAndTheAccelerationOfThePelvis()
    {
        const double Step = 0.001;
        for (var time = -0.9; time < 0.6; time += 0.05)
        {
            var acceleration = (StrongSwing.PelvisHeight(time + Step) - (2 * StrongSwing.PelvisHeight(time)) + StrongSwing.PelvisHeight(time - Step)) / (Step * Step);
            Assert.Equal(1 + (acceleration / Pulse.Gravity), StrongSwing.VerticalForce(time), 0.01);
        }
    }

    [Fact]
    public void TheHeadMovesAtImpactAsFastAsTheModelSaysAndIsAtTheBall()
    {
        const double Step = 1e-5;
        var (before, at) = (StrongSwing.Points(-Step)[0], StrongSwing.Points(0)[0]);

        Assert.Equal(StrongSwing.ClubHeadSpeed, (1 / Step * (at - before)).Norm, 0.1);
        Assert.InRange((at - new Point3(0, 0.02, 0)).Norm, 0, 0.03);
    }

    [Fact]
    public void TheBodyStandsStillBeforeAndLongAfterTheSwing()
    {
        Assert.Equal(StrongSwing.Points(-2), StrongSwing.Points(StrongSwing.Start - 0.1));
        Assert.Equal(1, StrongSwing.VerticalForce(-2), 1e-9);
        Assert.Equal(1, StrongSwing.VerticalForce(2), 1e-9);
        Assert.Equal(0.07, StrongSwing.PelvisHeight(3) - StrongSwing.PelvisHeight(-2), 1e-9);
    }

    [Fact]
    public void ALeftHandedPlayerIsTheMirrorImageWithTheSameTruth()
    {
        var mirrored = new SwingModel(Strong with { Body = Strong.Body with { LeftHanded = true } });
        var (left, right) = (mirrored.Lead(-0.1), StrongSwing.Lead(-0.1));

        Assert.Equal(StrongTruth, SwingTruth.Of(mirrored));
        Assert.Equal(right.Force with { Z = -right.Force.Z }, left.Force);
        Assert.Equal(-right.FreeMoment, left.FreeMoment);
        Assert.Equal((2 * Ground.FeetZ) - StrongSwing.Points(-0.1)[2].Z, mirrored.Points(-0.1)[2].Z);
    }

    [Fact]
    public void PracticeSwingsGoOnWithoutABallToSlowThem()
    {
        var practice = new SwingModel(Strong, hitsBall: false);

        Assert.Equal(StrongSwing.ClubHeadSpeed, practice.ClubHeadSpeed);
        Assert.True(SpeedAfter(practice) > SpeedAfter(StrongSwing) + 4);

        static double SpeedAfter(SwingModel swing) => (1000 * (swing.Points(0.003)[0] - swing.Points(0.002)[0])).Norm;
    }
}
