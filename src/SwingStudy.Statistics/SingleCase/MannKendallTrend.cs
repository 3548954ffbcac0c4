using System.Numerics;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.SingleCase;

/// <summary>The Mann–Kendall test of a monotone trend: Kendall's S of values against time.</summary>
/// <remarks>
/// S = Σ sign(yⱼ − yᵢ)·sign(tⱼ − tᵢ) over i &lt; j; var(S) corrected for ties in values and in times. Treats values as independent: a series
/// with carry-over from swing to swing has a larger variance than this.
/// Sources: Mann (1945), Econometrica 13:245–259; Kendall (1970), Rank Correlation Methods, ch. 4 and 5.
/// </remarks>
public sealed record MannKendallTrend
{
    /// <summary>Method word of <see cref="TauB"/>.</summary>
    public const string TauBMethod = "kendall-tau-b";

    /// <summary>Number of values.</summary>
    public required int Count { get; init; }

    /// <summary>Concordant minus discordant pairs.</summary>
    public required long S { get; init; }

    /// <summary>Variance of <see cref="S"/> without trend, given the ties; zero when all values or all times are equal.</summary>
    public required double Variance { get; init; }

    /// <summary>S/(n(n − 1)/2); null with fewer than two values.</summary>
    public double? TauA { get; init; }

    /// <summary>
    /// S divided by the geometric mean of the pairs untied in values and in times; p from the normal approximation with continuity correction.
    /// Undefined when all values or all times are equal.
    /// </summary>
    public required Estimate TauB { get; init; }

    /// <summary>(S − sign S)/√var(S); null when the variance is zero.</summary>
    public double? ZWithContinuity { get; init; }

    /// <summary>S/√var(S); null when the variance is zero.</summary>
    public double? ZWithoutContinuity { get; init; }

    /// <summary>Two-sided p of <see cref="ZWithContinuity"/>; null when the variance is zero.</summary>
    public double? PWithContinuity { get; init; }

    /// <summary>Two-sided p of <see cref="ZWithoutContinuity"/>; null when the variance is zero.</summary>
    public double? PWithoutContinuity { get; init; }

    /// <summary>Two-sided exact p, twice the smaller tail; null with ties, fewer than two or more than 50 values.</summary>
    public double? PExact { get; init; }

    /// <summary>The test for values at times 1, 2, 3, ….</summary>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static MannKendallTrend Of(ReadOnlySpan<double> values)
    {
        var times = new double[values.Length];
        for (var i = 0; i < times.Length; i++)
            times[i] = i + 1;
        return Of(times, values);
    }

    /// <summary>The test for values at given times; only the order of times matters.</summary>
    /// <exception cref="ArgumentException">Lengths differ or a value is not finite.</exception>
    public static MannKendallTrend Of(ReadOnlySpan<double> times, ReadOnlySpan<double> values)
    {
        if (times.Length != values.Length)
            throw new ArgumentException($"Each value needs its time: {values.Length} values, {times.Length} times.", nameof(times));
        Finite.RequireComputed(times, nameof(times));
        Finite.RequireComputed(values, nameof(values));
        long s = 0, tiedTimes = 0, tiedValues = 0;
        for (var i = 0; i < values.Length; i++)
        {
            for (var j = i + 1; j < values.Length; j++)
            {
                var inTime = times[j].CompareTo(times[i]);
                var inValue = values[j].CompareTo(values[i]);
                s += inTime * inValue;
                tiedTimes += inTime == 0 ? 1 : 0;
                tiedValues += inValue == 0 ? 1 : 0;
            }
        }

        var n = values.Length;
        var pairs = (long)n * (n - 1) / 2;
        var variance = VarianceOf(times, values);
        var scale = Math.Sqrt((double)(pairs - tiedTimes) * (pairs - tiedValues));
        double? plain = variance > 0 ? s / Math.Sqrt(variance) : null;
        double? continuous = variance > 0 ? (s - Math.Sign(s)) / Math.Sqrt(variance) : null;
        var p = TwoSided(continuous);
        return new MannKendallTrend
        {
            Count = n,
            S = s,
            Variance = variance,
            TauA = pairs > 0 ? (double)s / pairs : null,
            TauB = scale > 0
                ? new Estimate { Method = TauBMethod, Value = Math.Clamp(s / scale, -1, 1), P = p }
                : Estimate.NotDefined(TauBMethod, "needs two different values at two different times at least"),
            ZWithContinuity = continuous,
            ZWithoutContinuity = plain,
            PWithContinuity = p,
            PWithoutContinuity = TwoSided(plain),
            PExact = tiedTimes == 0 && tiedValues == 0 && n is > 1 and <= 50 ? Exact(n, s) : null,
        };
    }

    private static double? TwoSided(double? z) => z is { } value ? 2 * Normal.UpperTail(Math.Abs(value)) : null;

    private static double VarianceOf(ReadOnlySpan<double> times, ReadOnlySpan<double> values)
    {
        double n = values.Length;
        if (n < 2)
            return 0;
        var t = Ties(times);
        var u = Ties(values);
        var variance = ((n * (n - 1) * ((2 * n) + 5)) - t.Cubic - u.Cubic) / 18;
        variance += t.Pairs * u.Pairs / (2 * n * (n - 1));
        if (n > 2)
            variance += t.Triples * u.Triples / (9 * n * (n - 1) * (n - 2));

        // With all values or all times equal S can only be zero; the terms above cancel up to rounding.
        return t.Pairs == n * (n - 1) || u.Pairs == n * (n - 1) ? 0 : variance;
    }

    private static (double Pairs, double Triples, double Cubic) Ties(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        Array.Sort(sorted);
        double pairs = 0, triples = 0, cubic = 0;
        for (int start = 0, end; start < sorted.Length; start = end)
        {
            end = start + 1;
            while (end < sorted.Length && sorted[end] == sorted[start])
                end++;
            double k = end - start;
            pairs += k * (k - 1);
            triples += k * (k - 1) * (k - 2);
            cubic += k * (k - 1) * ((2 * k) + 5);
        }

        return (pairs, triples, cubic);
    }

    // The number of inversions of a random order of n values is a sum of independent uniform numbers on 0..k−1, k = 1..n; whole numbers keep
    // small tails exact.
    private static double Exact(int n, long s)
    {
        var most = n * (n - 1) / 2;
        var count = new BigInteger[most + 1];
        var next = new BigInteger[most + 1];
        count[0] = 1;
        var orders = BigInteger.One;
        for (var k = 2; k <= n; k++)
        {
            orders *= k;
            var window = BigInteger.Zero;
            for (var i = 0; i <= most; i++)
            {
                window += count[i];
                if (i >= k)
                    window -= count[i - k];
                next[i] = window;
            }

            (count, next) = (next, count);
        }

        var inversions = (int)((most - s) / 2);
        var tail = BigInteger.Zero;
        for (var i = 0; i <= Math.Min(inversions, most - inversions); i++)
            tail += count[i];
        return Math.Min(1, Ratio(2 * tail, orders));
    }

    // Both numbers fit a double up to 50 values: 50! is about 3e64.
    private static double Ratio(BigInteger part, BigInteger whole) => (double)part / (double)whole;
}
