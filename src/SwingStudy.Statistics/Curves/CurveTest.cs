using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Statistics.Curves;

/// <summary>Pointwise t curves with a permutation threshold for the largest |t|, which holds over the whole curve.</summary>
/// <remarks>
/// The total sum of squares of a node does not change when labels do, so t² = df·r²/(1 − r²) with r² the explained share: one product of labels and
/// curves serves all nodes, and the node with the largest r² has the largest |t|.
/// Sources: Nichols and Holmes (2002), Human Brain Mapping 15:1–25; Westfall and Young (1993), Resampling-Based Multiple Testing.
/// </remarks>
public static class CurveTest
{
    /// <summary>Method word of <see cref="TwoSample"/>.</summary>
    public const string TwoSampleMethod = "curve-t-two-sample-max-permutation";

    /// <summary>Method word of <see cref="Paired"/>.</summary>
    public const string PairedMethod = "curve-t-paired-max-sign-flip";

    /// <summary>Largest number of relabellings that are gone through completely.</summary>
    public const int LargestExact = 200_000;

    /// <summary>Pooled-variance t of the first minus the second set at each node.</summary>
    /// <param name="first">Curves of one condition over the same normalized time, one array a curve, all finite.</param>
    /// <param name="second">Curves of the other, as long.</param>
    /// <param name="alpha">Error rate over the whole curve.</param>
    /// <param name="chance">The stream of random relabellings; it is split, not drawn from, and not needed for an exact test.</param>
    /// <param name="compared">Relabellings to compare when there are too many for an exact test, the observed one included.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <returns>Undefined with an empty set, fewer than three curves, no nodes, or no node that varies.</returns>
    /// <exception cref="ArgumentException">Curves differ in length, a value is not finite, or a number is out of range.</exception>
    public static CurveTestResult TwoSample(
        IReadOnlyList<double[]> first, IReadOnlyList<double[]> second, double alpha = 0.05, Xoshiro256? chance = null, int compared = 10_000, int threads = 1)
    {
        double[][] all = [.. first, .. second];
        var nodes = CurveSet.Nodes(all, nameof(first));
        if (first.Count == 0 || second.Count == 0 || all.Length < 3 || nodes == 0)
            return NotDefined(TwoSampleMethod, alpha, $"needs at least one curve in each set and three in all, got {first.Count} and {second.Count}");
        double n1 = first.Count, n2 = second.Count, n = n1 + n2;

        // Centred and of unit sum of squares, the group sum s explains the share r² = s² n/(n₁n₂).
        var standard = new StandardCurves(all, nodes, centre: true);
        return Run(TwoSampleMethod, standard, CurveLabels.Choosing(all.Length, first.Count), Math.Sqrt(n / (n1 * n2)), n - 2, signed: false,
            node => TwoSampleT(first, second, node), alpha, chance, compared, threads);
    }

    /// <summary>Paired t of the second minus the first curve of each pair at each node; labels are signs of whole difference curves.</summary>
    /// <param name="first">First curve of each pair, over the same normalized time, all finite.</param>
    /// <param name="second">Second curve of each pair, in the same order.</param>
    /// <param name="alpha">Error rate over the whole curve.</param>
    /// <param name="chance">The stream of random sign patterns; it is split, not drawn from, and not needed for an exact test.</param>
    /// <param name="compared">Patterns to compare when there are too many for an exact test, the observed one included.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <returns>Undefined with fewer than two pairs, no nodes, or no difference anywhere.</returns>
    /// <exception cref="ArgumentException">Numbers of curves or lengths differ, a value is not finite, or a number is out of range.</exception>
    public static CurveTestResult Paired(
        IReadOnlyList<double[]> first, IReadOnlyList<double[]> second, double alpha = 0.05, Xoshiro256? chance = null, int compared = 10_000, int threads = 1)
    {
        if (first.Count != second.Count)
            throw new ArgumentException($"Each pair needs both curves: {first.Count} first, {second.Count} second.", nameof(second));
        var nodes = CurveSet.Nodes([.. first, .. second], nameof(first));
        if (first.Count < 2 || nodes == 0)
            return NotDefined(PairedMethod, alpha, $"needs at least two pairs, got {first.Count}");
        double[][] differences = [.. first.Zip(second, (a, b) => a.Zip(b, (x, y) => y - x).ToArray())];
        double n = first.Count;

        // With unit sum of squares the signed sum s explains the share r² = s²/n.
        var standard = new StandardCurves(differences, nodes, centre: false);
        return Run(PairedMethod, standard, CurveLabels.Flipping(first.Count), 1 / Math.Sqrt(n), n - 1, signed: true,
            node => OneSampleT(differences, node), alpha, chance, compared, threads);
    }

    private static CurveTestResult Run(
        string method, StandardCurves standard, CurveLabels labels, double scale, double df, bool signed, Func<int, double> observedT,
        double alpha, Xoshiro256? chance, int compared, int threads)
    {
        if (!(alpha > 0 && alpha < 1))
            throw new ArgumentException($"Alpha is a share between 0 and 1; got {alpha}.", nameof(alpha));
        if (!standard.AnyVaries)
            return NotDefined(method, alpha, "no node varies over the curves");
        var kernel = new LabelSums(standard.Rows, standard.Nodes, signed);
        var observed = new double[standard.Nodes];
        kernel.Sums(labels.Observed(), observed);
        var exact = labels.Count <= LargestExact;
        var largest = exact ? AllLargest(kernel, labels, threads) : RandomLargest(kernel, labels, observed, chance, compared, threads);
        Array.Sort(largest);
        double Size(double sum) => T(Math.Abs(sum) * scale, df);
        var threshold = largest[CurveTestResult.Rank(1 - alpha, largest.Length) - 1];
        var t = new double?[standard.Nodes];
        var p = new double?[standard.Nodes];
        for (var node = 0; node < t.Length; node++)
        {
            if (!standard.Varies(node))
                continue;
            t[node] = observedT(node);
            p[node] = ShareAtLeast(largest, Math.Abs(observed[node]));
        }

        var peak = observed.Max(Math.Abs);
        return new CurveTestResult
        {
            Method = method,
            T = t,
            Compared = largest.Length,
            Relabellings = labels.Count,
            IsExact = exact,
            LargestTs = [.. largest.Select(Size)],
            LargestT = t.Max(value => value is { } number ? Math.Abs(number) : 0),
            Threshold = Size(threshold),
            Alpha = alpha,
            P = ShareAtLeast(largest, peak),
            AdjustedP = p,
            Clusters = Clusters(observed, t, p, threshold),
        };
    }

    private static double[] AllLargest(LabelSums kernel, CurveLabels labels, int threads)
    {
        var all = labels.All();
        var largest = new double[(int)labels.Count];
        ResampleBlocks.Run(largest.Length, threads, new Xoshiro256(0), (start, end, _) => kernel.Copy().LargestSums(
            all.AsSpan(start * kernel.Groups, (end - start) * kernel.Groups), largest.AsSpan(start, end - start)));
        return largest;
    }

    private static double[] RandomLargest(LabelSums kernel, CurveLabels labels, double[] observed, Xoshiro256? chance, int compared, int threads)
    {
        if (chance is null)
            throw new ArgumentException($"{labels.Count} relabellings are too many to go through: a stream of chance is needed.", nameof(chance));
        ArgumentOutOfRangeException.ThrowIfLessThan(compared, 2);
        var largest = new double[compared];
        largest[^1] = observed.Max(Math.Abs);
        ResampleBlocks.Run(compared - 1, threads, chance, (start, end, stream) =>
        {
            var drawn = new byte[(end - start) * kernel.Groups];
            labels.Draw(stream, drawn);
            kernel.Copy().LargestSums(drawn, largest.AsSpan(start, end - start));
        });
        return largest;
    }

    private static List<CurveCluster> Clusters(double[] sums, double?[] t, double?[] p, double threshold)
    {
        var clusters = new List<CurveCluster>();
        var beyond = threshold * (1 + 1e-9);
        for (int from = 0, to; from < sums.Length; from = to)
        {
            to = from + 1;
            if (!(Math.Abs(sums[from]) > beyond))
                continue;
            var peak = from;
            while (to < sums.Length && Math.Abs(sums[to]) > beyond && Math.Sign(sums[to]) == Math.Sign(sums[from]))
            {
                peak = Math.Abs(sums[to]) > Math.Abs(sums[peak]) ? to : peak;
                to++;
            }

            clusters.Add(new CurveCluster(from, to - 1, t[peak]!.Value, p[peak]!.Value));
        }

        return clusters;
    }

    internal static double ShareAtLeast(double[] sorted, double value)
    {
        var floor = value * (1 - 1e-9);
        int low = 0, high = sorted.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (sorted[middle] < floor)
                low = middle + 1;
            else
                high = middle;
        }

        return (double)(sorted.Length - low) / sorted.Length;
    }

    // r² beyond 1 is rounding: the curves separate without scatter.
    private static double T(double r, double df) => r < 1 ? r * Math.Sqrt(df / ((1 - r) * (1 + r))) : double.PositiveInfinity;

    private static double TwoSampleT(IReadOnlyList<double[]> first, IReadOnlyList<double[]> second, int node)
    {
        var a = Summary.Of([.. first.Select(curve => curve[node])]);
        var b = Summary.Of([.. second.Select(curve => curve[node])]);
        var pooled = (a.SumOfSquares + b.SumOfSquares) / (a.Count + b.Count - 2);
        return Ratio(a.Mean!.Value - b.Mean!.Value, Math.Sqrt(pooled * ((1.0 / a.Count) + (1.0 / b.Count))));
    }

    private static double OneSampleT(double[][] differences, int node)
    {
        var summary = Summary.Of([.. differences.Select(curve => curve[node])]);
        return Ratio(summary.Mean!.Value, summary.StandardDeviation!.Value / Math.Sqrt(summary.Count));
    }

    private static double Ratio(double difference, double error) =>
        difference == 0 ? 0 : error == 0 ? Math.Sign(difference) * double.PositiveInfinity : difference / error;

    private static CurveTestResult NotDefined(string method, double alpha, string reason) => new() { Method = method, Alpha = alpha, Undefined = reason };
}
