namespace SwingStudy.Motion.Signals;

/// <summary>A curve through samples, made of cubics between neighbours.</summary>
public sealed class PiecewiseCubic
{
    private readonly double[] _times;
    private readonly double[] _values;
    private readonly double[] _slopes;

    private PiecewiseCubic(double[] times, double[] values, double[] slopes) => (_times, _values, _slopes) = (times, values, slopes);

    /// <summary>The spline whose second derivative is zero at both ends.</summary>
    /// <remarks>Source: de Boor (2001), A Practical Guide to Splines, ch. IV.</remarks>
    /// <param name="times">Rising, at least three.</param>
    /// <param name="values">As many, all finite.</param>
    public static PiecewiseCubic Natural(ReadOnlySpan<double> times, ReadOnlySpan<double> values) => Spline(times, values, isNatural: true);

    /// <summary>The spline whose first two and last two pieces are one cubic each.</summary>
    /// <remarks>Source: de Boor (2001), A Practical Guide to Splines, ch. IV, "not a knot".</remarks>
    /// <param name="times">Rising, at least four.</param>
    /// <param name="values">As many, all finite.</param>
    public static PiecewiseCubic NotAKnot(ReadOnlySpan<double> times, ReadOnlySpan<double> values) => Spline(times, values, isNatural: false);

    /// <summary>The cubic that keeps the shape: it rises and falls only where the samples do.</summary>
    /// <remarks>
    /// Slopes are weighted harmonic means of neighbouring differences, zero at turns; one-sided three-point slopes at the ends.
    /// Source: Fritsch and Butland (1984), SIAM J Sci Stat Comput 5:300.
    /// </remarks>
    /// <param name="times">Rising, at least three.</param>
    /// <param name="values">As many, all finite.</param>
    public static PiecewiseCubic ShapePreserving(ReadOnlySpan<double> times, ReadOnlySpan<double> values)
    {
        Check(times, values, 3);
        var (steps, rises) = Steps(times, values);
        var slopes = new double[times.Length];
        for (var i = 1; i < slopes.Length - 1; i++)
        {
            if (rises[i - 1] * rises[i] > 0)
            {
                var (before, after) = ((2 * steps[i]) + steps[i - 1], steps[i] + (2 * steps[i - 1]));
                slopes[i] = (before + after) / ((before / rises[i - 1]) + (after / rises[i]));
            }
        }

        slopes[0] = EndSlope(steps[0], steps[1], rises[0], rises[1]);
        slopes[^1] = EndSlope(steps[^1], steps[^2], rises[^1], rises[^2]);
        return new PiecewiseCubic(times.ToArray(), values.ToArray(), slopes);
    }

    /// <summary>Value at a time; beyond the ends, that of the last piece.</summary>
    public double At(double time)
    {
        var (i, step, x) = Piece(time);
        var (from, to) = (_values[i], _values[i + 1]);
        var (a, b) = (_slopes[i] * step, _slopes[i + 1] * step);
        return from + (x * (a + (x * ((3 * (to - from)) - (2 * a) - b + (x * ((2 * (from - to)) + a + b))))));
    }

    /// <summary>First derivative at a time.</summary>
    public double SlopeAt(double time)
    {
        var (i, step, x) = Piece(time);
        var (from, to) = (_values[i], _values[i + 1]);
        var (a, b) = (_slopes[i] * step, _slopes[i + 1] * step);
        return (a + (x * ((2 * ((3 * (to - from)) - (2 * a) - b)) + (3 * x * ((2 * (from - to)) + a + b))))) / step;
    }

    private (int Piece, double Step, double X) Piece(double time)
    {
        var found = Array.BinarySearch(_times, time);
        var i = Math.Clamp(found >= 0 ? found : ~found - 1, 0, _times.Length - 2);
        var step = _times[i + 1] - _times[i];
        return (i, step, (time - _times[i]) / step);
    }

    /// <summary>Slopes at the samples so that second derivatives agree on both sides: a tridiagonal system, solved by elimination.</summary>
    private static PiecewiseCubic Spline(ReadOnlySpan<double> times, ReadOnlySpan<double> values, bool isNatural)
    {
        Check(times, values, isNatural ? 3 : 4);
        var n = times.Length;
        var (h, d) = Steps(times, values);
        double[] below = new double[n], middle = new double[n], above = new double[n], right = new double[n];
        for (var i = 1; i < n - 1; i++)
        {
            (below[i], middle[i], above[i]) = (h[i], 2 * (h[i - 1] + h[i]), h[i - 1]);
            right[i] = 3 * ((h[i] * d[i - 1]) + (h[i - 1] * d[i]));
        }

        if (isNatural)
        {
            (middle[0], above[0], right[0]) = (2, 1, 3 * d[0]);
            (below[^1], middle[^1], right[^1]) = (1, 2, 3 * d[^1]);
        }
        else
        {
            (middle[0], above[0], right[0]) = NotAKnotEnd(h[0], h[1], d[0], d[1]);
            (middle[^1], below[^1], right[^1]) = NotAKnotEnd(h[^1], h[^2], d[^1], d[^2]);
        }

        for (var i = 1; i < n; i++)
        {
            var factor = below[i] / middle[i - 1];
            middle[i] -= factor * above[i - 1];
            right[i] -= factor * right[i - 1];
        }

        var slopes = new double[n];
        slopes[^1] = right[^1] / middle[^1];
        for (var i = n - 2; i >= 0; i--)
            slopes[i] = (right[i] - (above[i] * slopes[i + 1])) / middle[i];
        return new PiecewiseCubic(times.ToArray(), values.ToArray(), slopes);
    }

    private static (double Own, double Neighbour, double Right) NotAKnotEnd(double outer, double inner, double outerRise, double innerRise)
    {
        var both = outer + inner;
        return (inner, both, (((outer + (2 * both)) * inner * outerRise) + (outer * outer * innerRise)) / both);
    }

    /// <summary>One-sided slope that neither turns nor overshoots.</summary>
    private static double EndSlope(double outer, double inner, double outerRise, double innerRise)
    {
        var slope = ((((2 * outer) + inner) * outerRise) - (outer * innerRise)) / (outer + inner);
        if (Math.Sign(slope) != Math.Sign(outerRise))
            return 0;
        return Math.Sign(outerRise) != Math.Sign(innerRise) && Math.Abs(slope) > 3 * Math.Abs(outerRise) ? 3 * outerRise : slope;
    }

    private static (double[] Steps, double[] Rises) Steps(ReadOnlySpan<double> times, ReadOnlySpan<double> values)
    {
        var (steps, rises) = (new double[times.Length - 1], new double[times.Length - 1]);
        for (var i = 0; i < steps.Length; i++)
        {
            steps[i] = times[i + 1] - times[i];
            rises[i] = (values[i + 1] - values[i]) / steps[i];
        }

        return (steps, rises);
    }

    private static void Check(ReadOnlySpan<double> times, ReadOnlySpan<double> values, int least)
    {
        if (times.Length < least || times.Length != values.Length)
            throw new ArgumentException($"The curve needs at least {least} samples with their times.", nameof(times));
        for (var i = 1; i < times.Length; i++)
        {
            if (!(times[i] > times[i - 1]))
                throw new ArgumentException("Times must rise.", nameof(times));
        }
    }
}
