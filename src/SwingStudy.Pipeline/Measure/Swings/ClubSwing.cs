using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Kinematics;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>How fast the club goes and turns up to impact.</summary>
/// <remarks>
/// A moving polynomial tells it as long as half a window lies before impact. In the last half window it would see one side only, and its end swings out;
/// there the turn of the club about the hands tells it, as at impact itself.
/// </remarks>
internal sealed class ClubSwing
{
    private ClubSwing(double[] headSpeed, double[]? turnSpeed, double turnSpeedAtImpact) => (HeadSpeed, TurnSpeed, TurnSpeedAtImpact) = (headSpeed, turnSpeed, turnSpeedAtImpact);

    /// <summary>Speed of the head at each sample up to impact, metres per second.</summary>
    public double[] HeadSpeed { get; }

    /// <summary>Angular speed of the line from grip to head, degrees per second; null when the grip was not followed.</summary>
    public double[]? TurnSpeed { get; }

    /// <summary>The same at impact itself; NaN when the marks do not reach it.</summary>
    public double TurnSpeedAtImpact { get; }

    /// <summary>Of one swing; null when the head was not followed.</summary>
    public static ClubSwing? Of(MarkerSwing motion)
    {
        if (motion.Fit("club_head") is not { } head)
            return null;
        var speed = head.Velocity.Lengths();
        double[]? turn = null;
        if (motion.Fit("grip") is { } grip)
            turn = [.. SegmentAxes.OfLine(Between(grip.Place, head.Place), Between(grip.Velocity, head.Velocity)).Lengths().Select(radians => Angles.DegreesPerRadian * radians)];
        var axis = motion.Axis;
        var last = axis.To(0);
        int[] late = [.. Enumerable.Range(0, axis.Count).Where(i => i <= last && i > last - (head.Window / 2) && axis.TimeOf(i) > -ClubAtImpact.WindowS)];
        if ((motion.Seen("grip") ?? motion.Seen("lead_wrist")) is not { } hands)
            return new ClubSwing(speed, turn, double.NaN);
        var found = ClubAtImpact.At(hands, motion.Seen("club_head")!, [.. late.Select(i => axis.TimeOf(i)), 0], 0);
        if (found.Count == 0)
            return new ClubSwing(speed, turn, double.NaN);
        // What a gap left open stays open.
        foreach (var (i, club) in late.Zip(found).Where(pair => !double.IsNaN(speed[pair.First])))
        {
            speed[i] = club.Velocity.Length;
            if (turn is not null && !double.IsNaN(turn[i]))
                turn[i] = Angles.DegreesPerRadian * club.TurnRadPerS;
        }

        return new ClubSwing(speed, turn, turn is null ? double.NaN : Angles.DegreesPerRadian * found[^1].TurnRadPerS);
    }

    private static Trajectory Between(Trajectory from, Trajectory to) => new(
        [.. to.X.Zip(from.X, (a, b) => a - b)], [.. to.Y.Zip(from.Y, (a, b) => a - b)], [.. to.Z.Zip(from.Z, (a, b) => a - b)], from.Axis);
}
