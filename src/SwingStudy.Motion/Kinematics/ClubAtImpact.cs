using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Kinematics;

/// <summary>Place and velocity of the club head at impact or shortly before it, from hands and head before impact.</summary>
/// <remarks>
/// Velocity of the head = velocity of the hands + that of the shaft's turn about them. Each is the slope at that moment of a <see cref="RestrainedPolynomial"/>
/// through the samples of the last tenth of a second; no sample after impact is seen. Source of the kinematics: Zatsiorsky (1998), Kinematics of Human
/// Motion, ch. 3.
/// </remarks>
/// <param name="Place">Place of the head.</param>
/// <param name="Velocity">Its velocity; at impact, just before it.</param>
/// <param name="TurnRadPerS">Angular speed of the line from hands to head.</param>
/// <param name="SpeedScatterMps">Standard error of the speed that the noise of the marks makes.</param>
public sealed record ClubAtImpact(Vector3D Place, Vector3D Velocity, double TurnRadPerS, double SpeedScatterMps)
{
    /// <summary>Time before impact that is looked at, seconds.</summary>
    public const double WindowS = 0.1;

    /// <summary>Fewest samples in which hands and head were seen.</summary>
    public const int LeastSamples = 7;

    private const double MostMissing = 2;

    /// <summary>A shaft changes its length, as marks see it, and leaves the plane of its turn, by less than it turns.</summary>
    private const double DistanceShare = 0.1;
    private const double ElevationShare = 0.3;

    /// <summary>The head at impact; null when too few samples before it show both marks, or the last of them lies more than two samples before it.</summary>
    /// <param name="hands">A mark at the hands: the grip, or else the lead wrist.</param>
    /// <param name="head">The club head.</param>
    /// <param name="impactS">Moment of impact.</param>
    public static ClubAtImpact? Before(Trajectory hands, Trajectory head, double impactS) => At(hands, head, [impactS], impactS) is [var only] ? only : null;

    /// <summary>The same at several moments of the time that is looked at; none on the same conditions.</summary>
    /// <param name="hands">A mark at the hands.</param>
    /// <param name="head">The club head.</param>
    /// <param name="moments">Moments, at most <see cref="WindowS"/> before impact and none after it.</param>
    /// <param name="impactS">Moment of impact.</param>
    public static IReadOnlyList<ClubAtImpact> At(Trajectory hands, Trajectory head, IReadOnlyList<double> moments, double impactS)
    {
        var length = Math.Max(WindowS, LeastSamples / head.Axis.SampleRateHz);
        if (ClubTurn.Between(hands, head, impactS - length, impactS, LeastSamples) is not { } club || (impactS - club.Times[^1]) * head.Axis.SampleRateHz > MostMissing)
            return [];
        var (shaftVariance, handVariance) = (club.ShaftVariance(0, club.Times.Length), club.HandVariance());
        return [.. moments.Select(moment => At(club, moment, shaftVariance, handVariance))];
    }

    private static ClubAtImpact At(ClubTurn club, double moment, double shaftVariance, double handVariance)
    {
        double[] times = [.. club.Times.Select(time => time - moment)];
        var middle = club.Distance.Average();
        var turn = Fit(club.Turn, shaftVariance / (middle * middle), club.Rate);
        var elevation = Fit(club.Elevation, shaftVariance / (middle * middle), ElevationShare * club.Rate);
        var distance = Fit(club.Distance, shaftVariance, DistanceShare * middle * club.Rate);
        var handSpeed = Math.Max(1, (club.Hands[^1] - club.Hands[times.Length / 2]).Length / (times[^1] - times[times.Length / 2]));
        var (x, y, z) = (
            Fit([.. club.Hands.Select(p => p.X)], handVariance, handSpeed), Fit([.. club.Hands.Select(p => p.Y)], handVariance, handSpeed),
            Fit([.. club.Hands.Select(p => p.Z)], handVariance, handSpeed));
        var (place, velocity) = club.Shaft(turn, elevation, distance);
        return new ClubAtImpact(
            new Vector3D(x.Value, y.Value, z.Value) + place, new Vector3D(x.Slope, y.Slope, z.Slope) + velocity, place.Cross(velocity).Length / place.Dot(place),
            Math.Sqrt((middle * middle * turn.SlopeVariance) + x.SlopeVariance));

        RestrainedPolynomial Fit(double[] samples, double variance, double speed) => RestrainedPolynomial.Of(times, samples, variance, speed, club.OwnTimeS);
    }
}
