using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Kinematics;

/// <summary>The club head seen from the hands in polar coordinates about the axis of its turn: turn, elevation out of the plane of the turn, distance.</summary>
/// <remarks>
/// Around impact the head turns about the hands by some two radians within 50 ms. Its places bend so much that only a polynomial of high degree follows
/// them, whose slope at the end of a window is noisy; the angle of the turn is nearly straight. Nothing is assumed of the shaft: a bend or a mark beside it
/// shows in turn and distance. The axis is the sum of the vector products of all pairs of directions.
/// </remarks>
internal sealed class ClubTurn
{
    private const int NoiseDegree = 5;
    private const double LeastNoiseM = 1e-5;

    private readonly Vector3D _along;
    private readonly Vector3D _onward;
    private readonly Vector3D _axis;

    private ClubTurn(double[] times, Vector3D[] hands, Vector3D[] shafts)
    {
        (Times, Hands) = (times, hands);
        Vector3D axis = default;
        for (var j = 1; j < shafts.Length; j++)
        {
            for (var i = 0; i < j; i++)
                axis += shafts[i].Direction.Cross(shafts[j].Direction);
        }

        _axis = axis.Direction;
        _along = (shafts[^1] - (shafts[^1].Dot(_axis) * _axis)).Direction;
        _onward = _axis.Cross(_along);
        double[] degrees = [.. shafts.Select(shaft => Angles.DegreesPerRadian * Math.Atan2(shaft.Dot(_onward), shaft.Dot(_along)))];
        Turn = [.. Angles.Unwrapped(degrees).Select(angle => angle / Angles.DegreesPerRadian)];
        Elevation = [.. shafts.Select(shaft => Math.Asin(shaft.Dot(_axis) / shaft.Length))];
        Distance = [.. shafts.Select(shaft => shaft.Length)];
    }

    /// <summary>Times of the samples in which hands and head were seen.</summary>
    public double[] Times { get; }

    /// <summary>The hands.</summary>
    public Vector3D[] Hands { get; }

    /// <summary>Turn about the axis, radians, rising; zero at the last sample.</summary>
    public double[] Turn { get; }

    /// <summary>Angle out of the plane of the turn, radians.</summary>
    public double[] Elevation { get; }

    /// <summary>From hands to head, metres.</summary>
    public double[] Distance { get; }

    /// <summary>Angular speed over the last part of the samples, radians per second: a scale, not a result.</summary>
    public double Rate => Math.Max(1, Math.Abs(Turn[^1] - Turn[Times.Length / 2]) / (Times[^1] - Times[Times.Length / 2]));

    /// <summary>Time within which turn and hands change, seconds: that of one radian, on which the equation of a rod that is thrown outward by its own turn has its scale.</summary>
    public double OwnTimeS => 1 / Rate;

    /// <summary>Samples between two times in which both marks were seen; null when there are fewer than a number.</summary>
    public static ClubTurn? Between(Trajectory hands, Trajectory head, double fromS, double toS, int least)
    {
        var axis = head.Axis;
        int[] seen = [.. Enumerable.Range(0, axis.Count).Skip(axis.From(fromS)).TakeWhile(i => i <= axis.To(toS)).Where(i => !head[i].IsMissing && !hands[i].IsMissing)];
        return seen.Length < least ? null : new ClubTurn([.. seen.Select(i => axis.TimeOf(i))], [.. seen.Select(i => hands[i])], [.. seen.Select(i => head[i] - hands[i])]);
    }

    /// <summary>Variance of a coordinate of the shaft, square metres, from what polynomials of turn, elevation and distance leave.</summary>
    public double ShaftVariance(int from, int count)
    {
        var length = Distance.Average();
        return Variance(from, count, [.. Turn.Select(angle => length * angle)], [.. Elevation.Select(angle => length * angle)], Distance);
    }

    /// <summary>Variance of a coordinate of the hands.</summary>
    public double HandVariance() => Variance(0, Times.Length, [.. Hands.Select(p => p.X)], [.. Hands.Select(p => p.Y)], [.. Hands.Select(p => p.Z)]);

    /// <summary>The head from the hands, for turn, elevation and distance, and its velocity for their rates.</summary>
    public (Vector3D Place, Vector3D Velocity) Shaft(RestrainedPolynomial turn, RestrainedPolynomial elevation, RestrainedPolynomial distance)
    {
        var (sin, cos) = Math.SinCos(turn.Value);
        var (rise, level) = Math.SinCos(elevation.Value);
        var (outward, onward) = ((cos * _along) + (sin * _onward), (cos * _onward) - (sin * _along));
        var (direction, upward) = ((level * outward) + (rise * _axis), (level * _axis) - (rise * outward));
        return (distance.Value * direction,
            (distance.Slope * direction) + (distance.Value * level * turn.Slope * onward) + (distance.Value * elevation.Slope * upward));
    }

    private double Variance(int from, int count, params double[][] coordinates)
    {
        var degree = Math.Min(NoiseDegree, count - 2);
        var squares = 0.0;
        foreach (var samples in coordinates)
        {
            var fit = PolynomialFit.Of(Times.AsSpan(from, count), samples.AsSpan(from, count), degree);
            for (var i = from; i < from + count; i++)
                squares += (samples[i] - fit.At(Times[i])) * (samples[i] - fit.At(Times[i]));
        }

        return Math.Max(LeastNoiseM * LeastNoiseM, squares / (coordinates.Length * (count - degree - 1)));
    }
}
