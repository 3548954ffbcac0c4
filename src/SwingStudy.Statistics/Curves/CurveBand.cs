using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Statistics.Curves;

/// <summary>The mean curve of a set with its scatter and bands.</summary>
/// <remarks>
/// Pointwise limits hold at one node chosen beforehand; simultaneous limits hold at all nodes together and are wider.
/// Source: Degras (2011), Statistica Sinica 21:1735–1765 (simultaneous bands from the largest standardized deviation), here with the deviation's
/// distribution from resampled curves as in Lenhoff et al. (1999), Gait and Posture 9:10–17.
/// </remarks>
public sealed record CurveBand
{
    /// <summary>Method word.</summary>
    public const string Method = "curve-mean-band";

    /// <summary>Mean at each node; empty without curves.</summary>
    public required IReadOnlyList<double> Mean { get; init; }

    /// <summary>Standard deviation over curves at each node, divisor n − 1; empty with fewer than two curves.</summary>
    public required IReadOnlyList<double> StandardDeviation { get; init; }

    /// <summary>Number of curves.</summary>
    public required int Count { get; init; }

    /// <summary>Level of both bands, a share.</summary>
    public required double Level { get; init; }

    /// <summary>Multiple of the standard error for pointwise limits, Student's t with n − 1 degrees of freedom; null with fewer than two curves.</summary>
    public double? PointwiseFactor { get; init; }

    /// <summary>Multiple of the standard error for simultaneous limits; null with fewer than three curves or without scatter.</summary>
    public double? SimultaneousFactor { get; init; }

    /// <summary>Why there are no bands; null when there are.</summary>
    public string? Undefined { get; init; }

    /// <summary>Half-width at each node for a factor: factor · s/√n.</summary>
    public IReadOnlyList<double> HalfWidth(double factor) => [.. StandardDeviation.Select(s => factor * s / Math.Sqrt(Count))];

    /// <summary>Mean and bands.</summary>
    /// <param name="curves">Curves over the same normalized time, one array a curve, all finite.</param>
    /// <param name="chance">The stream of resampled curves; it is split, not drawn from.</param>
    /// <param name="level">Level of the bands, a share.</param>
    /// <param name="resamples">Number of resamples for the simultaneous band.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <exception cref="ArgumentException">Curves differ in length, a value is not finite, or a number is out of range.</exception>
    public static CurveBand Of(IReadOnlyList<double[]> curves, Xoshiro256 chance, double level = 0.95, int resamples = 2000, int threads = 1)
    {
        Description.Finite.RequireConfidence(level);
        ArgumentOutOfRangeException.ThrowIfLessThan(resamples, 1);
        var nodes = CurveSet.Nodes(curves, nameof(curves));
        var n = curves.Count;
        if (n == 0 || nodes == 0)
            return new CurveBand { Mean = [], StandardDeviation = [], Count = n, Level = level, Undefined = "needs at least one curve with a node" };
        var summaries = Enumerable.Range(0, nodes).Select(node => Description.Summary.Of([.. curves.Select(curve => curve[node])])).ToArray();
        double[] mean = [.. summaries.Select(s => s.Mean!.Value)];
        if (n < 2)
            return new CurveBand { Mean = mean, StandardDeviation = [], Count = n, Level = level, Undefined = "needs at least two curves for a band" };
        double[] deviation = [.. summaries.Select(s => s.StandardDeviation!.Value)];
        return new CurveBand
        {
            Mean = mean,
            StandardDeviation = deviation,
            Count = n,
            Level = level,
            PointwiseFactor = StudentT.Critical(level, n - 1),
            SimultaneousFactor = n > 2 && deviation.Any(s => s > 0) ? Simultaneous(curves, mean, chance, level, resamples, threads) : null,
        };
    }

    // The largest |mean* − mean|/(s*/√n) over nodes, over resampled sets of curves; nodes at which a resample has no scatter are left out of it.
    private static double Simultaneous(IReadOnlyList<double[]> curves, double[] mean, Xoshiro256 chance, double level, int resamples, int threads)
    {
        double[][] centred = [.. curves.Select(curve => curve.Zip(mean, (y, m) => y - m).ToArray())];
        var largest = new double[resamples];
        ResampleBlocks.Run(resamples, threads, chance, (start, end, stream) =>
        {
            var sums = new double[mean.Length];
            var squares = new double[mean.Length];
            for (var i = start; i < end; i++)
            {
                Array.Clear(sums);
                Array.Clear(squares);
                for (var drawn = 0; drawn < centred.Length; drawn++)
                {
                    var curve = centred[stream.NextIndex(centred.Length)];
                    for (var node = 0; node < curve.Length; node++)
                    {
                        sums[node] += curve[node];
                        squares[node] += curve[node] * curve[node];
                    }
                }

                largest[i] = Largest(sums, squares, centred.Length);
            }
        });
        Array.Sort(largest);
        return largest[CurveTestResult.Rank(level, resamples) - 1];
    }

    private static double Largest(double[] sums, double[] squares, int count)
    {
        var largest = 0.0;
        for (var node = 0; node < sums.Length; node++)
        {
            // n·mean²/s² with mean = sum/n and (n − 1)s² = squares − sum²/n.
            var rest = squares[node] - (sums[node] * sums[node] / count);
            if (rest > 1e-12 * squares[node])
                largest = Math.Max(largest, sums[node] * sums[node] / count * (count - 1) / rest);
        }

        return Math.Sqrt(largest);
    }
}
