using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Sign-flip test of a mean difference: each difference is as likely with either sign when the conditions make no difference.</summary>
/// <remarks>
/// Statistic: the mean of the differences. Zero differences stay in and count as two flips that agree.
/// Source: Fisher (1935), The Design of Experiments, sec. 21; Pitman (1937).
/// </remarks>
public static class SignFlip
{
    /// <summary>Method word of <see cref="Exact"/>.</summary>
    public const string ExactMethod = "sign-flip-mean-exact";

    /// <summary>Method word of <see cref="MonteCarlo"/>.</summary>
    public const string MonteCarloMethod = "sign-flip-mean";

    /// <summary>Largest number of differences that <see cref="Exact"/> takes.</summary>
    public const int LargestExact = SubsetSums.LargestSet;

    /// <summary>Exact where the differences are few enough, else by random flips.</summary>
    /// <inheritdoc cref="MonteCarlo" path="/param|/returns|/exception"/>
    public static RandomizationResult Of(ReadOnlySpan<double> differences, Xoshiro256 chance, int resamples = 9999, int threads = 1) =>
        differences.Length <= LargestExact ? Exact(differences) : MonteCarlo(differences, chance, resamples, threads);

    /// <summary>All 2^n sign patterns.</summary>
    /// <param name="differences">Second minus first value of each pair, all finite.</param>
    /// <returns>Undefined without differences.</returns>
    /// <exception cref="ArgumentException">A value is not finite, or there are more than <see cref="LargestExact"/>.</exception>
    public static RandomizationResult Exact(ReadOnlySpan<double> differences)
    {
        if (differences.Length > LargestExact)
            throw new ArgumentException($"At most {LargestExact} differences are enumerated; draw flips instead.", nameof(differences));
        if (Measure(differences) is not var (sum, spread))
            return RandomizationResult.NotDefined(ExactMethod, "needs at least one difference, got none");
        var slack = TieSlack.Of(sum, spread);
        var all = 1L << differences.Length;
        var (greater, less) = SubsetSums.CountSigned(differences, sum - slack, sum + slack);
        var size = Math.Abs(sum) - slack;
        var both = all;
        if (size > 0)
        {
            var (high, low) = SubsetSums.CountSigned(differences, size, -size);
            both = high + low;
        }

        return new RandomizationResult
        {
            Method = ExactMethod,
            Observed = sum / differences.Length,
            Assignments = all,
            Compared = all,
            IsExact = true,
            CountGreater = greater,
            CountLess = less,
            CountTwoSided = both,
        };
    }

    /// <summary>Random sign patterns, the observed one counted as one more.</summary>
    /// <param name="differences">Second minus first value of each pair, all finite.</param>
    /// <param name="chance">The stream of the test; it is split, not drawn from.</param>
    /// <param name="resamples">Number of random patterns, at least 1.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <returns>Undefined without differences.</returns>
    /// <exception cref="ArgumentException">A value is not finite or a number is out of range.</exception>
    public static RandomizationResult MonteCarlo(ReadOnlySpan<double> differences, Xoshiro256 chance, int resamples = 9999, int threads = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(resamples, 1);
        if (Measure(differences) is not var (sum, spread))
            return RandomizationResult.NotDefined(MonteCarloMethod, "needs at least one difference, got none");
        var slack = TieSlack.Of(sum, spread);
        var values = differences.ToArray();
        long greater = 1, less = 1, both = 1;
        ResampleBlocks.Run(resamples, threads, chance, (start, end, stream) =>
        {
            long above = 0, below = 0, far = 0;
            for (var i = start; i < end; i++)
            {
                var flipped = 0.0;
                var bits = 0UL;
                for (var j = 0; j < values.Length; j++)
                {
                    if (j % 64 == 0)
                        bits = stream.NextBits();
                    flipped += (bits & 1) == 0 ? values[j] : -values[j];
                    bits >>= 1;
                }

                above += flipped >= sum - slack ? 1 : 0;
                below += flipped <= sum + slack ? 1 : 0;
                far += Math.Abs(flipped) >= Math.Abs(sum) - slack ? 1 : 0;
            }

            Interlocked.Add(ref greater, above);
            Interlocked.Add(ref less, below);
            Interlocked.Add(ref both, far);
        });
        return new RandomizationResult
        {
            Method = MonteCarloMethod,
            Observed = sum / values.Length,
            Assignments = Math.Pow(2, values.Length),
            Compared = resamples + 1L,
            CountGreater = greater,
            CountLess = less,
            CountTwoSided = both,
        };
    }

    private static (double Sum, double Spread)? Measure(ReadOnlySpan<double> differences)
    {
        Finite.RequireComputed(differences, nameof(differences));
        if (differences.IsEmpty)
            return null;
        double sum = 0, spread = 0;
        foreach (var difference in differences)
        {
            sum += difference;
            spread = Math.Max(spread, Math.Abs(difference));
        }

        if (!double.IsFinite(spread * differences.Length))
            throw new ArgumentException("The differences are beyond the range of numbers.", nameof(differences));
        return (sum, spread);
    }
}
