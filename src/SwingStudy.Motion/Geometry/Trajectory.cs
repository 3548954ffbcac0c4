using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Geometry;

/// <summary>A point over time: its coordinates in metres, or their derivatives.</summary>
/// <param name="X">To the target; NaN where it was not seen.</param>
/// <param name="Y">Up.</param>
/// <param name="Z">To the right facing the target.</param>
/// <param name="Axis">When the samples were taken.</param>
public sealed record Trajectory(double[] X, double[] Y, double[] Z, TimeAxis Axis)
{
    /// <summary>Number of samples.</summary>
    public int Count => X.Length;

    /// <summary>The point at a sample.</summary>
    public Vector3D this[int sample] => new(X[sample], Y[sample], Z[sample]);

    /// <summary>The point at a time, along a straight line between samples; missing outside.</summary>
    public Vector3D At(double timeS)
    {
        var position = Axis.PositionOf(timeS);
        return new Vector3D(Straight.At(X, position), Straight.At(Y, position), Straight.At(Z, position));
    }

    /// <summary>Mean over the samples of a span of time that are there; missing when none is.</summary>
    public Vector3D Mean(double fromS, double toS) => new(Span.Mean(X, Axis, fromS, toS), Span.Mean(Y, Axis, fromS, toS), Span.Mean(Z, Axis, fromS, toS));

    /// <summary>Each coordinate changed by the same function of its samples.</summary>
    public Trajectory Map(Func<double[], double[]> change) => new(change(X), change(Y), change(Z), Axis);

    /// <summary>Low-passed, within each stretch without missing samples.</summary>
    public Trajectory Filtered(LowPass filter)
    {
        var filtered = filter.ApplyToStretches([X, Y, Z], Axis.SampleRateHz);
        return new(filtered[0], filtered[1], filtered[2], Axis);
    }

    /// <summary>First derivative by central differences, within each stretch of three or more samples.</summary>
    public Trajectory Velocity() => Map(values => Span.EachStretch(values, 3, part => Difference.Central(part, Axis.SampleRateHz)));

    /// <summary>Length of the vector at each sample: for a velocity, the speed.</summary>
    public double[] Lengths() => [.. Enumerable.Range(0, Count).Select(i => this[i].Length)];

    /// <summary>The same recorded with a left-handed player's sides exchanged: z turned over.</summary>
    public Trajectory Mirrored() => this with { Z = [.. Z.Select(z => -z)] };

    /// <summary>Middle of several points at each sample; missing where one is.</summary>
    public static Trajectory Middle(params IReadOnlyList<Trajectory> points) => new(
        Average([.. points.Select(p => p.X)]), Average([.. points.Select(p => p.Y)]), Average([.. points.Select(p => p.Z)]), points[0].Axis);

    private static double[] Average(double[][] parts) => [.. Enumerable.Range(0, parts[0].Length).Select(i => parts.Average(part => part[i]))];
}
