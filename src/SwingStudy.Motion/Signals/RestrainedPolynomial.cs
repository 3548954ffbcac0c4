namespace SwingStudy.Motion.Signals;

/// <summary>Value and slope at one moment of a polynomial whose high derivatives a movement holds down, with their variances.</summary>
/// <remarks>
/// Value and the first two derivatives are free. The k-th derivative above has a normal prior about zero with standard deviation speed / Tᵏ⁻¹: a movement
/// of that speed cannot change faster than within its own time T. Quiet and dense samples overrule the prior, so that nothing is smoothed away; noisy or few
/// samples do not, so that the end of a window does not swing out as that of a free polynomial does. Solved as least squares with one further row for each
/// prior, through an orthonormal basis. Source: Gelman et al. (2013), Bayesian Data Analysis, ch. 14 (regression with known variance and normal priors);
/// Björck (1996), Numerical Methods for Least Squares Problems, ch. 2.
/// </remarks>
/// <param name="Value">Value at the moment.</param>
/// <param name="Slope">First derivative there.</param>
/// <param name="ValueVariance">Variance of the value.</param>
/// <param name="SlopeVariance">Variance of the slope.</param>
/// <param name="Misfit">Sum of squares of what is left, samples and priors alike, in noise variances.</param>
public sealed record RestrainedPolynomial(double Value, double Slope, double ValueVariance, double SlopeVariance, double Misfit)
{
    private const int Degree = 6;
    private const int Free = 2;

    /// <summary>Fits samples about a moment.</summary>
    /// <param name="times">Times of the samples less the moment, at least three different ones.</param>
    /// <param name="samples">As many, all finite.</param>
    /// <param name="noiseVariance">Variance of the noise of a sample, above zero.</param>
    /// <param name="speed">Speed of the movement in the samples' unit per second, above zero.</param>
    /// <param name="ownTimeS">Time T within which it changes.</param>
    /// <exception cref="ArgumentException">There are fewer than three samples.</exception>
    public static RestrainedPolynomial Of(ReadOnlySpan<double> times, ReadOnlySpan<double> samples, double noiseVariance, double speed, double ownTimeS)
    {
        if (samples.Length <= Free || times.Length != samples.Length)
            throw new ArgumentException($"A restrained polynomial needs {Free + 1} samples with their times.", nameof(samples));
        var reach = 0.0;
        foreach (var time in times)
            reach = Math.Max(reach, Math.Abs(time));
        var noise = Math.Sqrt(noiseVariance);
        var rows = samples.Length + Degree - Free;
        var (columns, right) = (new double[Degree + 1][], new double[rows]);
        for (var k = 0; k <= Degree; k++)
        {
            columns[k] = new double[rows];
            for (var i = 0; i < times.Length; i++)
                columns[k][i] = Math.Pow(times[i] / reach, k) / noise;
        }

        for (var i = 0; i < samples.Length; i++)
            right[i] = samples[i] / noise;
        var deviation = speed * reach;
        for (var k = 2; k <= Degree; k++)
        {
            // Standard deviation of the k-th coefficient over times scaled to [−1, 1]: that of the derivative times reachᵏ / k!.
            deviation *= reach / ownTimeS / k;
            if (k > Free)
                columns[k][samples.Length + k - Free - 1] = 1 / deviation;
        }

        return Solved(columns, right, reach);
    }

    private static RestrainedPolynomial Solved(double[][] basis, double[] right, double reach)
    {
        var count = basis.Length;
        var (triangle, projected, left) = (new double[count, count], new double[count], right.ToArray());
        for (var k = 0; k < count; k++)
        {
            for (var round = 0; round < 2; round++)
            {
                for (var j = 0; j < k; j++)
                {
                    var overlap = Dot(basis[j], basis[k]);
                    triangle[j, k] += overlap;
                    Subtract(basis[k], overlap, basis[j]);
                }
            }

            triangle[k, k] = Math.Sqrt(Dot(basis[k], basis[k]));
            for (var i = 0; i < basis[k].Length; i++)
                basis[k][i] /= triangle[k, k];
            projected[k] = Dot(basis[k], left);
            Subtract(left, projected[k], basis[k]);
        }

        var (value, slope) = (InverseRow(triangle, count, 0), InverseRow(triangle, count, 1));
        return new RestrainedPolynomial(Dot(value, projected), Dot(slope, projected) / reach, Dot(value, value), Dot(slope, slope) / (reach * reach), Dot(left, left));
    }

    /// <summary>A row of the inverse of an upper triangle.</summary>
    private static double[] InverseRow(double[,] triangle, int count, int row)
    {
        var inverse = new double[count];
        inverse[row] = 1 / triangle[row, row];
        for (var k = row + 1; k < count; k++)
        {
            for (var j = row; j < k; j++)
                inverse[k] -= inverse[j] * triangle[j, k];
            inverse[k] /= triangle[k, k];
        }

        return inverse;
    }

    private static void Subtract(double[] from, double factor, double[] what)
    {
        for (var i = 0; i < from.Length; i++)
            from[i] -= factor * what[i];
    }

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }
}
