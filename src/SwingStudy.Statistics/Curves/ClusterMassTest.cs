using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Statistics.Curves;

/// <summary>Cluster p of curves: how often a relabelling has a run of nodes as heavy as the one observed.</summary>
/// <remarks>
/// Runs are formed where |t| exceeds the two-sided point of Student's t at the forming level; mass = Σt over a run. A small p says that the curves
/// differ somewhere, and that this run is heavier than chance makes them; it does not prove where the run begins or ends.
/// Sources: Bullmore et al. (1999), IEEE Transactions on Medical Imaging 18:32–42; Maris and Oostenveld (2007), Journal of Neuroscience Methods
/// 164:177–190.
/// </remarks>
public static class ClusterMassTest
{
    /// <summary>Method word of <see cref="TwoSample"/>.</summary>
    public const string TwoSampleMethod = "curve-t-two-sample-cluster-mass";

    /// <summary>Method word of <see cref="Paired"/>.</summary>
    public const string PairedMethod = "curve-t-paired-cluster-mass";

    // Labellings whose whole sum curves are held at once.
    private const int Batch = 64;

    /// <summary>Runs of the pooled t of the first minus the second set.</summary>
    /// <param name="first">Curves of one condition over the same normalized time, one array a curve, all finite.</param>
    /// <param name="second">Curves of the other, as long.</param>
    /// <param name="formingAlpha">Two-sided level at which nodes form runs, chosen beforehand.</param>
    /// <param name="chance">The stream of random relabellings; it is split, not drawn from, and not needed for an exact test.</param>
    /// <param name="compared">Relabellings to compare when there are too many for an exact test, the observed one included.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <returns>Undefined with an empty set, fewer than three curves, no nodes, or no node that varies.</returns>
    /// <exception cref="ArgumentException">Curves differ in length, a value is not finite, or a number is out of range.</exception>
    public static ClusterMassResult TwoSample(
        IReadOnlyList<double[]> first, IReadOnlyList<double[]> second, double formingAlpha = 0.05, Xoshiro256? chance = null, int compared = 10_000, int threads = 1)
    {
        double[][] all = [.. first, .. second];
        var nodes = CurveSet.Nodes(all, nameof(first));
        if (first.Count == 0 || second.Count == 0 || all.Length < 3 || nodes == 0)
            return NotDefined(TwoSampleMethod, $"needs at least one curve in each set and three in all, got {first.Count} and {second.Count}");
        double n1 = first.Count, n2 = second.Count;
        var scale = Math.Sqrt((n1 + n2) / (n1 * n2));
        return Run(TwoSampleMethod, new StandardCurves(all, nodes, centre: true), CurveLabels.Choosing(all.Length, first.Count), scale, n1 + n2 - 2,
            signed: false, formingAlpha, chance, compared, threads);
    }

    /// <summary>Runs of the paired t of the second minus the first curve of each pair.</summary>
    /// <param name="first">First curve of each pair, over the same normalized time, all finite.</param>
    /// <param name="second">Second curve of each pair, in the same order.</param>
    /// <param name="formingAlpha">Two-sided level at which nodes form runs, chosen beforehand.</param>
    /// <param name="chance">The stream of random sign patterns; it is split, not drawn from, and not needed for an exact test.</param>
    /// <param name="compared">Patterns to compare when there are too many for an exact test, the observed one included.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <returns>Undefined with fewer than two pairs, no nodes, or no difference anywhere.</returns>
    /// <exception cref="ArgumentException">Numbers of curves or lengths differ, a value is not finite, or a number is out of range.</exception>
    public static ClusterMassResult Paired(
        IReadOnlyList<double[]> first, IReadOnlyList<double[]> second, double formingAlpha = 0.05, Xoshiro256? chance = null, int compared = 10_000, int threads = 1)
    {
        if (first.Count != second.Count)
            throw new ArgumentException($"Each pair needs both curves: {first.Count} first, {second.Count} second.", nameof(second));
        var nodes = CurveSet.Nodes([.. first, .. second], nameof(first));
        if (first.Count < 2 || nodes == 0)
            return NotDefined(PairedMethod, $"needs at least two pairs, got {first.Count}");
        double[][] differences = [.. first.Zip(second, (a, b) => a.Zip(b, (x, y) => y - x).ToArray())];
        return Run(PairedMethod, new StandardCurves(differences, nodes, centre: false), CurveLabels.Flipping(first.Count), 1 / Math.Sqrt(first.Count),
            first.Count - 1, signed: true, formingAlpha, chance, compared, threads);
    }

    private static ClusterMassResult Run(
        string method, StandardCurves standard, CurveLabels labels, double scale, double df, bool signed, double formingAlpha, Xoshiro256? chance,
        int compared, int threads)
    {
        Finite.RequireConfidence(1 - formingAlpha);
        if (!standard.AnyVaries)
            return NotDefined(method, "no node varies over the curves");
        var kernel = new LabelSums(standard.Rows, standard.Nodes, signed);
        var forming = StudentT.Critical(1 - formingAlpha, df);
        var observed = new double[standard.Nodes];
        kernel.Sums(labels.Observed(), observed);
        var runs = new ClusterScan(scale, df, forming);
        var exact = labels.Count <= CurveTest.LargestExact;
        if (!exact && chance is null)
            throw new ArgumentException($"{labels.Count} relabellings are too many to go through: a stream of chance is needed.", nameof(chance));
        ArgumentOutOfRangeException.ThrowIfLessThan(compared, 2);
        var all = exact ? labels.All() : [];
        var heaviest = new double[exact ? (int)labels.Count : compared];
        var drawn = exact ? heaviest.Length : compared - 1;
        ResampleBlocks.Run(drawn, threads, chance ?? new Xoshiro256(0), (start, end, stream) =>
        {
            var own = kernel.Copy();
            var labelling = new byte[(end - start) * own.Groups];
            if (exact)
                all.AsSpan(start * own.Groups, labelling.Length).CopyTo(labelling);
            else
                labels.Draw(stream, labelling);
            var sums = new double[Batch * own.Nodes];
            for (var from = start; from < end; from += Batch)
            {
                var count = Math.Min(Batch, end - from);
                own.Sums(labelling.AsSpan((from - start) * own.Groups, count * own.Groups), sums);
                for (var i = 0; i < count; i++)
                    heaviest[from + i] = runs.Heaviest(sums.AsSpan(i * own.Nodes, own.Nodes));
            }
        });
        if (!exact)
            heaviest[^1] = runs.Heaviest(observed);
        Array.Sort(heaviest);
        return new ClusterMassResult
        {
            Method = method,
            FormingT = forming,
            Compared = heaviest.Length,
            IsExact = exact,
            Clusters = [.. runs.All(observed).Select(run => new MassCluster(run.From, run.To, run.Mass, CurveTest.ShareAtLeast(heaviest, Math.Abs(run.Mass))))],
        };
    }

    private static ClusterMassResult NotDefined(string method, string reason) => new() { Method = method, Undefined = reason };
}
