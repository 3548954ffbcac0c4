namespace SwingStudy.Motion.Signals;

/// <summary>A polynomial through samples by least squares, with its derivatives.</summary>
/// <remarks>
/// Weights of samples come from an orthonormal basis (modified Gram-Schmidt, done twice) over times scaled to [−1, 1], so that unevenly spaced
/// samples and short windows stay well conditioned. Source: Björck (1996), Numerical Methods for Least Squares Problems, ch. 2.
/// </remarks>
public sealed class PolynomialFit
{
    private readonly double _centre;
    private readonly double _scale;
    private readonly double[] _coefficients;

    private PolynomialFit(double centre, double scale, double[] coefficients) => (_centre, _scale, _coefficients) = (centre, scale, coefficients);

    /// <summary>Fits a polynomial.</summary>
    /// <param name="times">Times of the samples, at least <paramref name="degree"/> + 1 different ones.</param>
    /// <param name="samples">As many samples, all finite.</param>
    /// <param name="degree">0 to 8.</param>
    /// <exception cref="ArgumentException">There are too few samples.</exception>
    public static PolynomialFit Of(ReadOnlySpan<double> times, ReadOnlySpan<double> samples, int degree)
    {
        if (samples.Length <= degree || times.Length != samples.Length)
            throw new ArgumentException($"A polynomial of degree {degree} needs {degree + 1} samples with their times.", nameof(samples));
        var (centre, scale) = Scale(times);
        var (basis, triangle) = Orthonormal(times, centre, scale, degree);
        var projected = new double[degree + 1];
        for (var k = 0; k <= degree; k++)
        {
            for (var i = 0; i < samples.Length; i++)
                projected[k] += basis[k][i] * samples[i];
        }

        return new PolynomialFit(centre, scale, Solve(triangle, projected));
    }

    /// <summary>Value or derivative at a time.</summary>
    /// <param name="time">In the unit of the given times.</param>
    /// <param name="derivative">0 = the value, 1 = per unit of time, 2 = per unit squared.</param>
    public double At(double time, int derivative = 0)
    {
        var x = (time - _centre) / _scale;
        var sum = 0.0;
        for (var k = _coefficients.Length - 1; k >= derivative; k--)
        {
            var factor = 1.0;
            for (var j = 0; j < derivative; j++)
                factor *= k - j;
            sum = (sum * x) + (factor * _coefficients[k]);
        }

        return sum / Math.Pow(_scale, derivative);
    }

    /// <summary>The weight of each sample in the value or derivative at a time: what a moving polynomial multiplies samples with.</summary>
    internal static double[] Weights(ReadOnlySpan<double> times, int degree, double time, int derivative)
    {
        var (centre, scale) = Scale(times);
        var (basis, triangle) = Orthonormal(times, centre, scale, degree);
        var weights = new double[times.Length];
        for (var k = 0; k <= degree; k++)
        {
            // The value at the time of the polynomial that belongs to the k-th direction of the basis.
            var direction = new double[degree + 1];
            direction[k] = 1;
            var value = new PolynomialFit(centre, scale, Solve(triangle, direction)).At(time, derivative);
            for (var i = 0; i < weights.Length; i++)
                weights[i] += value * basis[k][i];
        }

        return weights;
    }

    private static (double Centre, double Scale) Scale(ReadOnlySpan<double> times)
    {
        var (low, high) = (times[0], times[0]);
        foreach (var time in times)
            (low, high) = (Math.Min(low, time), Math.Max(high, time));
        return ((low + high) / 2, high > low ? (high - low) / 2 : 1);
    }

    private static (double[][] Basis, double[][] Triangle) Orthonormal(ReadOnlySpan<double> times, double centre, double scale, int degree)
    {
        var basis = new double[degree + 1][];
        var triangle = new double[degree + 1][];
        for (var k = 0; k <= degree; k++)
        {
            var column = new double[times.Length];
            for (var i = 0; i < column.Length; i++)
                column[i] = Math.Pow((times[i] - centre) / scale, k);
            triangle[k] = new double[degree + 1];
            for (var round = 0; round < 2; round++)
            {
                for (var j = 0; j < k; j++)
                {
                    var overlap = Dot(basis[j], column);
                    triangle[j][k] += overlap;
                    for (var i = 0; i < column.Length; i++)
                        column[i] -= overlap * basis[j][i];
                }
            }

            triangle[k][k] = Math.Sqrt(Dot(column, column));
            for (var i = 0; i < column.Length; i++)
                column[i] /= triangle[k][k];
            basis[k] = column;
        }

        return (basis, triangle);
    }

    private static double[] Solve(double[][] triangle, double[] right)
    {
        for (var k = right.Length - 1; k >= 0; k--)
        {
            for (var j = k + 1; j < right.Length; j++)
                right[k] -= triangle[k][j] * right[j];
            right[k] /= triangle[k][k];
        }

        return right;
    }

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }
}
