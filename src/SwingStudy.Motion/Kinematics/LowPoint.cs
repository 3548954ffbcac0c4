using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Kinematics;

/// <summary>The lowest point of the club head's path around contact.</summary>
/// <remarks>
/// Height is fitted as a polynomial of the place along the target line, of samples before and after contact alike: a ball takes speed from the head and
/// hardly turns its path, so that the path is one curve where the movement over time is two. What turf or ball do to the path is in it. The trade measures
/// from the ball; common practice, no source.
/// </remarks>
/// <param name="AlongM">Along the target line from contact, + to the target.</param>
/// <param name="BelowM">How far it lies below contact, not below zero.</param>
/// <param name="HeightM">Its height in the laboratory.</param>
public sealed record LowPoint(double AlongM, double BelowM, double HeightM)
{
    /// <summary>How far from contact along the target line samples are taken, metres.</summary>
    public const double ReachM = 0.6;

    /// <summary>Degree of the polynomial.</summary>
    public const int Degree = 4;

    /// <summary>Fewest samples within reach.</summary>
    public const int LeastSamples = Degree + 2;

    private const int LeastOnEitherSide = 2;
    private const double StepM = 0.0005;

    /// <summary>Finds it; null when too few samples lie within reach in one run, or the path is not lowest between them.</summary>
    /// <param name="head">The club head; samples that were not seen part the run.</param>
    /// <param name="contact">Place of the head at contact.</param>
    /// <param name="contactS">Moment of contact.</param>
    public static LowPoint? Of(Trajectory head, Vector3D contact, double contactS)
    {
        var (from, to) = (head.Axis.To(contactS), head.Axis.To(contactS));
        if (contact.IsMissing || from < 0 || !IsNear(from))
            return null;
        while (from > 0 && IsNear(from - 1))
            from--;
        while (to < head.Count - 1 && IsNear(to + 1))
            to++;
        if (to - from + 1 < LeastSamples)
            return null;
        double[] along = [.. Enumerable.Range(from, to - from + 1).Select(i => head.X[i] - contact.X)];
        var path = PolynomialFit.Of(along, head.Y.AsSpan(from, along.Length), Degree);
        var (lowest, at) = (double.PositiveInfinity, double.NaN);
        var end = along.Max();
        for (var x = along.Min(); x <= end; x += StepM)
        {
            var height = path.At(x);
            if (height < lowest)
                (lowest, at) = (height, x);
        }

        return along.Count(x => x < at) >= LeastOnEitherSide && along.Count(x => x > at) >= LeastOnEitherSide ? new LowPoint(at, path.At(0) - lowest, lowest) : null;

        bool IsNear(int i) => !head[i].IsMissing && Math.Abs(head.X[i] - contact.X) <= ReachM;
    }
}
