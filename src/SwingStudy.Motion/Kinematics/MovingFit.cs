using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Signals;

namespace SwingStudy.Motion.Kinematics;

/// <summary>A point of club or hands up to impact, smoothed by a moving polynomial that sees no sample after impact.</summary>
/// <remarks>
/// A filter that looks both ways smears the step of impact over its reach; here the last window before impact ends at it, and its polynomial gives place
/// and velocity at the very moment of impact, between samples too.
/// </remarks>
/// <param name="Place">The smoothed point; missing after impact and in gaps.</param>
/// <param name="Velocity">Its derivative.</param>
/// <param name="AtImpact">Place at impact; missing when the last window does not reach it.</param>
/// <param name="VelocityAtImpact">Velocity just before impact.</param>
/// <param name="Window">Samples of the moving window.</param>
public sealed record MovingFit(Trajectory Place, Trajectory Velocity, Vector3D AtImpact, Vector3D VelocityAtImpact, int Window)
{
    /// <summary>Samples that may be missing between the last one seen and impact.</summary>
    private const double MostMissing = 2;

    /// <summary>Smooths a point.</summary>
    /// <param name="raw">The point, gaps of tolerable length filled.</param>
    /// <param name="impactS">Moment of impact.</param>
    /// <param name="windowS">Length of the window.</param>
    /// <param name="degree">Degree of the polynomial.</param>
    public static MovingFit Before(Trajectory raw, double impactS, double windowS, int degree)
    {
        var rate = raw.Axis.SampleRateHz;
        var window = WindowSamples(windowS, rate, degree);
        var before = raw.Map(values => [.. values.Select((x, i) => raw.Axis.TimeOf(i) <= impactS ? x : double.NaN)]);
        var (place, placeSpeed) = AtEnd(before, impactS, window, degree);
        return new MovingFit(
            before.Map(values => Span.EachStretch(values, window, part => LocalPolynomial.Smooth(part, rate, window, degree))),
            before.Map(values => Span.EachStretch(values, window, part => LocalPolynomial.Smooth(part, rate, window, degree, 1))),
            place,
            placeSpeed,
            window);
    }

    /// <summary>An odd number of samples that covers a time, at least two more than the polynomial has coefficients.</summary>
    public static int WindowSamples(double windowS, double sampleRateHz, int degree)
    {
        var samples = Math.Max((int)Math.Round(windowS * sampleRateHz) + 1, degree + 3);
        return samples % 2 == 1 ? samples : samples + 1;
    }

    private static (Vector3D Place, Vector3D Velocity) AtEnd(Trajectory before, double impactS, int window, int degree)
    {
        var last = before.Axis.To(impactS);
        while (last >= 0 && before[last].IsMissing)
            last--;
        var from = last - window + 1;
        if (from < 0 || before.Axis.PositionOf(impactS) - last > MostMissing || Enumerable.Range(from, window).Any(i => before[i].IsMissing))
            return (Vector3D.Missing, Vector3D.Missing);
        double[] times = [.. Enumerable.Range(from, window).Select(i => before.Axis.TimeOf(i))];
        var x = PolynomialFit.Of(times, before.X.AsSpan(from, window), degree);
        var y = PolynomialFit.Of(times, before.Y.AsSpan(from, window), degree);
        var z = PolynomialFit.Of(times, before.Z.AsSpan(from, window), degree);
        return (new Vector3D(x.At(impactS), y.At(impactS), z.At(impactS)), new Vector3D(x.At(impactS, 1), y.At(impactS, 1), z.At(impactS, 1)));
    }
}
