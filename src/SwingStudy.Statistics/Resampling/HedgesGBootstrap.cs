using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.EffectSizes;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Resampling;

/// <summary>BCa interval of Hedges' g of two independent samples: each sample is resampled by itself.</summary>
/// <remarks>
/// g = J(ν)(mean(after) − mean(before))/s_pooled, ν = n₁ + n₂ − 2. z₀ from the share of resamples below g, ties half; acceleration for several
/// samples a = Σᵢ Σⱼ u³/nᵢ³ / (6(Σᵢ Σⱼ u²/nᵢ²)^1.5), u = (nᵢ − 1)(mean of the leave-one-out values − value).
/// Sources: Efron and Tibshirani (1993), An Introduction to the Bootstrap, ch. 14; Davison and Hinkley (1997), Bootstrap Methods, eq. 5.25.
/// </remarks>
public static class HedgesGBootstrap
{
    /// <summary>Method word of <see cref="Bca"/>.</summary>
    public const string BcaMethod = "hedges-g-pooled-bootstrap-bca";

    /// <summary>g with its BCa interval. Swings of one session are not independent: use a cluster bootstrap where sessions matter.</summary>
    /// <param name="before">Values of the first condition, all finite.</param>
    /// <param name="after">Values of the second, same unit, all finite.</param>
    /// <param name="chance">The stream of the resamples; it is split, not drawn from.</param>
    /// <param name="resamples">Number of resamples, at least 1.</param>
    /// <param name="confidence">Level of the interval, a share.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <param name="largeSample">Takes J(ν) ≈ 1 − 3/(4ν − 1) in place of the exact factor.</param>
    /// <returns>
    /// g; undefined with fewer than three values in a sample or without scatter. The interval is null when all resamples lie on one side of g.
    /// Resamples without any scatter are left out.
    /// </returns>
    /// <exception cref="ArgumentException">A value is not finite or a number is out of range.</exception>
    public static Estimate Bca(
        ReadOnlySpan<double> before, ReadOnlySpan<double> after, Xoshiro256 chance, int resamples = 9999, double confidence = 0.95, int threads = 1,
        bool largeSample = false)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(resamples, 1);
        Finite.RequireConfidence(confidence);
        Finite.Require(before, nameof(before));
        Finite.Require(after, nameof(after));
        if (before.Length < 3 || after.Length < 3)
            return Estimate.NotDefined(BcaMethod, $"needs at least three values in each sample, got {before.Length} and {after.Length}");
        double nu = before.Length + after.Length - 2;
        var pair = Standardized(before, after);
        if (pair is not var (x, y))
            return Estimate.NotDefined(BcaMethod, "needs values that vary within a sample and lie within the range of numbers");
        var correction = largeSample ? HedgesCorrection.Approximate(nu) : HedgesCorrection.Exact(nu);
        var sumsX = SampleSums.Of(x);
        var sumsY = SampleSums.Of(y);
        var observed = SampleSums.Ratio(sumsX, sumsY);
        var replicates = new double[resamples];
        ResampleBlocks.Run(resamples, threads, chance, (start, end, stream) => Replicate(x, y, stream, replicates.AsSpan(start, end - start)));
        return new Estimate
        {
            Method = BcaMethod,
            Value = correction * observed,
            Interval = Limits(replicates, observed, Acceleration(x, y, sumsX, sumsY), confidence) is { } d
                ? new Interval(correction * d.Low, correction * d.High, confidence)
                : null,
        };
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Replicate(double[] x, double[] y, Xoshiro256 stream, Span<double> replicates)
    {
        var words = new uint[x.Length + y.Length];
        for (var i = 0; i < replicates.Length; i++)
        {
            stream.Fill(words);
            replicates[i] = SampleSums.Ratio(Drawn(x, words.AsSpan(0, x.Length)), Drawn(y, words.AsSpan(x.Length)));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static SampleSums Drawn(double[] values, ReadOnlySpan<uint> words)
    {
        // Four running sums each, so that one addition need not wait for the last.
        double sum0 = 0, sum1 = 0, sum2 = 0, sum3 = 0, square0 = 0, square1 = 0, square2 = 0, square3 = 0;
        ref var at = ref MemoryMarshal.GetArrayDataReference(values);
        ref var word = ref MemoryMarshal.GetReference(words);
        var i = 0;
        for (; i <= words.Length - 4; i += 4)
        {
            var value0 = Unsafe.Add(ref at, Xoshiro256.Index(Unsafe.Add(ref word, i), values.Length));
            var value1 = Unsafe.Add(ref at, Xoshiro256.Index(Unsafe.Add(ref word, i + 1), values.Length));
            var value2 = Unsafe.Add(ref at, Xoshiro256.Index(Unsafe.Add(ref word, i + 2), values.Length));
            var value3 = Unsafe.Add(ref at, Xoshiro256.Index(Unsafe.Add(ref word, i + 3), values.Length));
            sum0 += value0;
            sum1 += value1;
            sum2 += value2;
            sum3 += value3;
            square0 += value0 * value0;
            square1 += value1 * value1;
            square2 += value2 * value2;
            square3 += value3 * value3;
        }

        for (; i < words.Length; i++)
        {
            var value = Unsafe.Add(ref at, Xoshiro256.Index(words[i], values.Length));
            sum0 += value;
            square0 += value * value;
        }

        return new SampleSums(sum0 + sum1 + (sum2 + sum3), square0 + square1 + (square2 + square3), words.Length);
    }

    private static Interval? Limits(double[] replicates, double observed, double acceleration, double confidence)
    {
        var finite = Array.TrueForAll(replicates, double.IsFinite) ? replicates : Array.FindAll(replicates, double.IsFinite);
        if (finite.Length == 0)
            return null;

        // Two quantiles are all that is read: selecting them takes a fraction of the time of sorting.
        // Resamples of the same values in another order give the same ratio up to rounding, and count as equal.
        double below = 0, slack = 1e-11 * Math.Max(1, Math.Abs(observed));
        foreach (var value in finite)
            below += value < observed - slack ? 1 : value <= observed + slack ? 0.5 : 0;
        if (BootstrapDistribution.Levels(below / finite.Length, acceleration, confidence) is not { } levels)
            return null;
        return new Interval(
            SortedQuantile.AtUnsorted(finite, levels.Low, QuantileRule.HyndmanFan7),
            SortedQuantile.AtUnsorted(finite, levels.High, QuantileRule.HyndmanFan7),
            confidence);
    }

    private static double Acceleration(double[] x, double[] y, SampleSums sumsX, SampleSums sumsY)
    {
        double squares = 0, cubes = 0;
        Add(x, value => SampleSums.Ratio(sumsX.Without(value), sumsY));
        Add(y, value => SampleSums.Ratio(sumsX, sumsY.Without(value)));
        return squares > 0 ? cubes / (6 * Math.Pow(squares, 1.5)) : 0;

        void Add(double[] sample, Func<double, double> without)
        {
            var left = new double[sample.Length];
            double mean = 0, n = sample.Length;
            for (var i = 0; i < left.Length; i++)
                mean += (left[i] = without(sample[i])) / n;
            foreach (var value in left)
            {
                var u = (n - 1) * (mean - value) / n;
                squares += u * u;
                cubes += u * u * u;
            }
        }
    }

    // Both samples minus a common origin, in units of the largest deviation: neither offset nor scale costs digits, and g does not change.
    private static (double[] X, double[] Y)? Standardized(ReadOnlySpan<double> before, ReadOnlySpan<double> after)
    {
        var first = Summary.Of(before);
        var second = Summary.Of(after);
        if (!(first.SumOfSquares + second.SumOfSquares > 0) || !double.IsFinite(first.SumOfSquares + second.SumOfSquares))
            return null;
        var origin = (first.Mean!.Value / 2) + (second.Mean!.Value / 2);
        var scale = 0.0;
        foreach (var value in before)
            scale = Math.Max(scale, Math.Abs(value - origin));
        foreach (var value in after)
            scale = Math.Max(scale, Math.Abs(value - origin));
        if (!double.IsFinite(scale) || !double.IsFinite(1 / scale))
            return null;
        var x = new double[before.Length];
        var y = new double[after.Length];
        for (var i = 0; i < x.Length; i++)
            x[i] = (before[i] - origin) / scale;
        for (var i = 0; i < y.Length; i++)
            y[i] = (after[i] - origin) / scale;
        return (x, y);
    }
}
