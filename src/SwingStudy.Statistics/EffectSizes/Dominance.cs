using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.EffectSizes;

/// <summary>How often a value of one condition exceeds a value of the other, over all pairs of two independent samples.</summary>
/// <remarks>
/// Needs only order: any rising transformation of the values leaves it alone. Sources: Cliff (1993), Psychological Bulletin 114:494–509;
/// Vargha and Delaney (2000), Journal of Educational and Behavioral Statistics 25:101–132.
/// </remarks>
/// <param name="AfterHigher">Pairs in which the value after is higher.</param>
/// <param name="BeforeHigher">Pairs in which the value before is higher.</param>
/// <param name="Tied">Pairs of equal values.</param>
/// <param name="Variance">Cliff's unbiased variance of δ; null with fewer than two values in a condition.</param>
public sealed record Dominance(long AfterHigher, long BeforeHigher, long Tied, double? Variance)
{
    /// <summary>Method word of <see cref="ProbabilityOfSuperiority"/>.</summary>
    public const string SuperiorityMethod = "probability-of-superiority";

    /// <summary>Method word of <see cref="CliffsDelta"/>.</summary>
    public const string CliffMethod = "cliffs-delta";

    /// <summary>Method word of <see cref="RankBiserial"/>.</summary>
    public const string RankBiserialMethod = "rank-biserial";

    /// <summary>All pairs.</summary>
    public long Pairs => AfterHigher + BeforeHigher + Tied;

    /// <summary>Mann and Whitney's U of the values after: pairs won, ties half.</summary>
    public double U => AfterHigher + (0.5 * Tied);

    /// <summary>Counts all pairs of two samples.</summary>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static Dominance Of(ReadOnlySpan<double> before, ReadOnlySpan<double> after)
    {
        Finite.Require(before, nameof(before));
        Finite.Require(after, nameof(after));
        var (x, y) = (Sorted(after), Sorted(before));
        long higher = 0, lower = 0;
        double squaresAfter = 0, squaresBefore = 0;
        var n1 = x.Length;
        var n2 = y.Length;
        foreach (var value in x)
        {
            var (below, above) = (CountBelow(y, value), CountAbove(y, value));
            higher += below;
            lower += above;
            squaresAfter += Square((below - above) / (double)Math.Max(1, n2));
        }

        foreach (var value in y)
            squaresBefore += Square((CountAbove(x, value) - CountBelow(x, value)) / (double)Math.Max(1, n1));
        var tied = ((long)n1 * n2) - higher - lower;
        return new Dominance(higher, lower, tied, CliffVariance(n1, n2, higher, lower, squaresAfter, squaresBefore));
    }

    /// <summary>P(after &gt; before) + ½ P(after = before).</summary>
    /// <returns>From 0 to 1, ½ when neither tends to be higher; interval by Cliff's variance, cut at the bounds. Undefined with an empty condition.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public Estimate ProbabilityOfSuperiority(double confidence = 0.95)
    {
        var delta = CliffsDelta(confidence);
        if (delta.Value is not { } value)
            return Estimate.NotDefined(SuperiorityMethod, delta.Undefined!);
        Interval? interval = delta.Interval is { } i ? new Interval((i.Low + 1) / 2, (i.High + 1) / 2, i.Level) : null;
        return Estimate.Of(SuperiorityMethod, (value + 1) / 2, delta.StandardError / 2, interval);
    }

    /// <summary>δ = P(after &gt; before) − P(after &lt; before).</summary>
    /// <returns>From −1 to 1. SE and interval by Cliff's unbiased variance, the interval asymmetric after Cliff (1993) and
    /// within the bounds; no SE when a condition has one value or the variance estimate is negative, no interval when it is zero (complete
    /// separation). Undefined with an empty condition.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public Estimate CliffsDelta(double confidence = 0.95) => Delta(CliffMethod, confidence);

    /// <summary>The rank-biserial correlation of two independent samples, which equals Cliff's δ.</summary>
    /// <returns>As <see cref="CliffsDelta"/>.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public Estimate RankBiserial(double confidence = 0.95) => Delta(RankBiserialMethod, confidence);

    private Estimate Delta(string method, double confidence)
    {
        Finite.RequireConfidence(confidence);
        if (Pairs == 0)
            return Estimate.NotDefined(method, "needs at least one value in each condition");
        var d = (AfterHigher - BeforeHigher) / (double)Pairs;
        if (Variance is not >= 0)
            return Estimate.Of(method, d);
        var variance = Variance.Value;
        if (variance == 0)
            return Estimate.Of(method, d, 0);
        var z = Distributions.Normal.Critical(confidence);
        var centre = d - (d * d * d);
        var half = z * Math.Sqrt(variance * (((1 - (d * d)) * (1 - (d * d))) + (z * z * variance)));
        var scale = 1 - (d * d) + (z * z * variance);
        var interval = new Interval(Math.Max(-1, (centre - half) / scale), Math.Min(1, (centre + half) / scale), confidence);
        return Estimate.Of(method, d, Math.Sqrt(variance), interval.Contains(d) ? interval : null);
    }

    private static double? CliffVariance(double n1, double n2, long higher, long lower, double squaresAfter, double squaresBefore)
    {
        if (n1 < 2 || n2 < 2)
            return null;
        var d = (higher - lower) / (n1 * n2);
        var rows = squaresAfter - (n1 * d * d);
        var columns = squaresBefore - (n2 * d * d);
        var cells = higher + lower - (n1 * n2 * d * d);
        return ((n2 * n2 * rows) + (n1 * n1 * columns) - cells) / (n1 * n2 * ((n1 * n2) - 1));
    }

    private static double[] Sorted(ReadOnlySpan<double> values)
    {
        var copy = values.ToArray();
        Array.Sort(copy);
        return copy;
    }

    private static int CountBelow(double[] sorted, double value) => LowerBound(sorted, value, orEqual: false);

    private static int CountAbove(double[] sorted, double value) => sorted.Length - LowerBound(sorted, value, orEqual: true);

    private static int LowerBound(double[] sorted, double value, bool orEqual)
    {
        int low = 0, high = sorted.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (sorted[middle] < value || (orEqual && sorted[middle] == value))
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }

    private static double Square(double x) => x * x;
}
