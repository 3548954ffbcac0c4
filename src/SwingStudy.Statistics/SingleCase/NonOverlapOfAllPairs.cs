using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>Non-overlap of all pairs (NAP): the share of A–B pairs in which the B value is better, ties counted half.</summary>
/// <remarks>
/// NAP = (improved + tied/2)/(mn), m = n(A), n = n(B); the same number as the area under the ROC curve. Treats values as independent.
/// Source: Parker and Vannest (2009), Behavior Therapy 40:357–367.
/// </remarks>
public sealed record NonOverlapOfAllPairs
{
    /// <summary>Method word of the estimate.</summary>
    public const string Method = "nap";

    /// <summary>NAP with the standard error of Hanley and McNeil (1982) and the interval of Newcombe (2006), method 5.</summary>
    public required Estimate Estimate { get; init; }

    /// <summary>The pairs behind the estimate.</summary>
    public required PairCounts Pairs { get; init; }

    /// <summary>
    /// Standard error from the unbiased variance of Sen (1967); null when a phase holds one value or the variance estimate is negative.
    /// </summary>
    public double? StandardErrorUnbiased { get; init; }

    /// <summary>
    /// The interval by those roots of the same equation that lie nearest to the estimate. It differs from the estimate's own interval only with
    /// complete separation, where the estimate itself is a root and this interval has no width: it then says nothing about precision.
    /// </summary>
    public Interval? NearestRoots { get; init; }

    /// <summary>Standard error when the phases do not differ and no values tie, √((m + n + 1)/(12mn)); null without pairs.</summary>
    public double? StandardErrorNull { get; init; }

    /// <summary>NAP of phase B over phase A.</summary>
    /// <remarks>
    /// R, C the mean squared row and column means of the pair scores (1, ½, 0) and T the mean squared score. Hanley–McNeil, with no distribution
    /// assumed: var = [x(1 − x) + (n − 1)(R − x²) + (m − 1)(C − x²)]/(mn). Unbiased:
    /// [x − (m + n − 1)x² + n·R + m·C − 2·T]/((m − 1)(n − 1)). Interval: the roots of
    /// mn(NAP − x)²(2 − x)(1 + x) = z²x(1 − x)(2 + h + (1 + 2h)x(1 − x)), h = (m + n)/2 − 1.
    /// Sources: Hanley and McNeil (1982), Radiology 143:29–36; Sen (1967), Psychometrika 32; Newcombe (2006), Statistics in Medicine 25:559–573.
    /// </remarks>
    /// <param name="phaseA">Values of the earlier phase, any order, all finite.</param>
    /// <param name="phaseB">Values of the later phase, same unit, all finite.</param>
    /// <param name="improvement">Which way counts as better.</param>
    /// <param name="confidence">Level of the interval, a share.</param>
    /// <returns>The estimate; undefined when a phase is empty.</returns>
    /// <exception cref="ArgumentException">A value is not finite or the confidence is no share.</exception>
    public static NonOverlapOfAllPairs Of(
        ReadOnlySpan<double> phaseA, ReadOnlySpan<double> phaseB, Improvement improvement = Improvement.Increase, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var pairs = PairCounts.Of(phaseA, phaseB, improvement);
        if (pairs.Total == 0)
            return new NonOverlapOfAllPairs { Estimate = Estimate.NotDefined(Method, PhaseOverlap.EmptyPhase(phaseA, phaseB)), Pairs = pairs };
        double m = phaseA.Length, n = phaseB.Length;
        var nap = (pairs.Improved + (pairs.Tied / 2.0)) / pairs.Total;
        var (rows, columns, squares) = Moments(phaseA, phaseB, improvement);
        var variance = ((nap * (1 - nap)) + ((n - 1) * (rows - (nap * nap))) + ((m - 1) * (columns - (nap * nap)))) / (m * n);
        var z = Normal.Critical(confidence);
        var interval = new Interval(Root(nap, m, n, z, low: true), Root(nap, m, n, z, low: false), confidence);
        return new NonOverlapOfAllPairs
        {
            Pairs = pairs,
            StandardErrorUnbiased = Unbiased(m, n, nap, rows, columns, squares),
            NearestRoots = nap is 0 or 1 ? new Interval(nap, nap, confidence) : interval,
            StandardErrorNull = Math.Sqrt((m + n + 1) / (12 * m * n)),
            Estimate = new Estimate
            {
                Method = Method,
                Value = nap,
                StandardError = Math.Sqrt(Math.Max(0, variance)),
                Interval = interval,
            },
        };
    }

    private static double? Unbiased(double m, double n, double nap, double rows, double columns, double squares)
    {
        if (m < 2 || n < 2)
            return null;
        var variance = (nap - ((m + n - 1) * nap * nap) + (n * rows) + (m * columns) - (2 * squares)) / ((m - 1) * (n - 1));

        // Complete separation gives exactly zero; the sums may leave a rounding trace on either side of it.
        if (Math.Abs(variance) < 1e-14)
            return 0;
        return variance > 0 ? Math.Sqrt(variance) : null;
    }

    private static (double Rows, double Columns, double Squares) Moments(
        ReadOnlySpan<double> phaseA, ReadOnlySpan<double> phaseB, Improvement improvement)
    {
        double m = phaseA.Length, n = phaseB.Length, rows = 0, squares = 0, columns = 0;
        foreach (var a in phaseA)
        {
            var sum = 0.0;
            foreach (var b in phaseB)
            {
                var score = Score(a, b, improvement);
                sum += score;
                squares += score * score;
            }

            rows += sum * sum;
        }

        foreach (var b in phaseB)
        {
            var sum = 0.0;
            foreach (var a in phaseA)
                sum += Score(a, b, improvement);
            columns += sum * sum;
        }

        return (rows / (m * n * n), columns / (m * m * n), squares / (m * n));
    }

    private static double Score(double a, double b, Improvement improvement) =>
        a == b ? 0.5 : b > a == (improvement == Improvement.Increase) ? 1 : 0;

    // The gap between the two sides changes sign once on either side of the estimate, at the limit sought.
    private static double Root(double nap, double m, double n, double z, bool low)
    {
        var h = ((m + n) / 2) - 1;
        double inside = nap, outside = low ? 0 : 1;
        for (var i = 0; i < 200 && inside != outside; i++)
        {
            var x = (inside + outside) / 2;
            if (x == inside || x == outside)
                break;
            var spread = x * (1 - x);
            var gap = (m * n * (nap - x) * (nap - x) * (2 - x) * (1 + x)) - (z * z * spread * (2 + h + ((1 + (2 * h)) * spread)));
            if (gap > 0)
                outside = x;
            else
                inside = x;
        }

        return (inside + outside) / 2;
    }
}
