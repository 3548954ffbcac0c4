using System.Runtime.CompilerServices;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Permutation test of the difference of two means: group labels are exchangeable when the conditions make no difference.</summary>
/// <remarks>
/// Statistic mean(group 1) − mean(group 2); p = share of relabellings at least as extreme, the observed one included.
/// Sources: Fisher (1935), The Design of Experiments; Phipson and Smyth (2010), Stat. Appl. Genet. Mol. Biol. 9, art. 39 (Monte Carlo p).
/// </remarks>
public static class TwoSampleMeanPermutation
{
    /// <summary>Method word of <see cref="Exact"/>.</summary>
    public const string ExactMethod = "permutation-mean-difference-exact";

    /// <summary>Method word of <see cref="MonteCarlo"/>.</summary>
    public const string MonteCarloMethod = "permutation-mean-difference";

    /// <summary>Largest total number of values that <see cref="Exact"/> takes.</summary>
    public const int LargestExact = SubsetSums.LargestSet;

    /// <summary>Exact where the values are few enough, else by random relabellings.</summary>
    /// <inheritdoc cref="MonteCarlo" path="/param|/returns|/exception"/>
    public static RandomizationResult Of(
        ReadOnlySpan<double> group1, ReadOnlySpan<double> group2, Xoshiro256 chance, int resamples = 9999, int threads = 1) =>
        group1.Length + group2.Length <= LargestExact ? Exact(group1, group2) : MonteCarlo(group1, group2, chance, resamples, threads);

    /// <summary>All C(n₁ + n₂, n₁) relabellings.</summary>
    /// <param name="group1">Values of one condition, all finite.</param>
    /// <param name="group2">Values of the other, same unit, all finite.</param>
    /// <returns>Undefined when a group is empty.</returns>
    /// <exception cref="ArgumentException">A value is not finite, or there are more than <see cref="LargestExact"/> values.</exception>
    public static RandomizationResult Exact(ReadOnlySpan<double> group1, ReadOnlySpan<double> group2)
    {
        if (group1.Length + group2.Length > LargestExact)
            throw new ArgumentException($"At most {LargestExact} values are enumerated; draw relabellings instead.", nameof(group1));
        var pool = Centred(group1, group2, out var observed, out var spread);
        if (observed is not { } difference)
            return RandomizationResult.NotDefined(ExactMethod, $"needs at least one value in each group, got {group1.Length} and {group2.Length}");
        double n1 = group1.Length, n2 = group2.Length, total = Sum(pool);
        var assignments = Choices.Binomial(pool.Length, group1.Length);
        var slack = TieSlack.Of(difference, spread);
        var (greater, less) = SubsetSums.CountOfSize(pool, group1.Length, SumFor(difference - slack), SumFor(difference + slack));
        var size = Math.Abs(difference) - slack;
        long both;
        if (size <= 0)
        {
            both = (long)assignments;
        }
        else
        {
            var (high, low) = SubsetSums.CountOfSize(pool, group1.Length, SumFor(size), SumFor(-size));
            both = high + low;
        }

        return new RandomizationResult
        {
            Method = ExactMethod,
            Observed = difference,
            Assignments = assignments,
            Compared = (long)assignments,
            IsExact = true,
            CountGreater = greater,
            CountLess = less,
            CountTwoSided = both,
        };

        // The sum of group 1 at which the difference of means takes a value.
        double SumFor(double value) => (value + (total / n2)) / ((1 / n1) + (1 / n2));
    }

    /// <summary>Random relabellings, the observed one counted as one more.</summary>
    /// <param name="group1">Values of one condition, all finite.</param>
    /// <param name="group2">Values of the other, same unit, all finite.</param>
    /// <param name="chance">The stream of the test; it is split, not drawn from.</param>
    /// <param name="resamples">Number of random relabellings, at least 1.</param>
    /// <param name="threads">Threads to use; they do not change the result.</param>
    /// <returns>Undefined when a group is empty.</returns>
    /// <exception cref="ArgumentException">A value is not finite or a number is out of range.</exception>
    public static RandomizationResult MonteCarlo(
        ReadOnlySpan<double> group1, ReadOnlySpan<double> group2, Xoshiro256 chance, int resamples = 9999, int threads = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(resamples, 1);
        var pool = Centred(group1, group2, out var observed, out var spread);
        if (observed is not { } difference)
            return RandomizationResult.NotDefined(MonteCarloMethod, $"needs at least one value in each group, got {group1.Length} and {group2.Length}");
        var total = Sum(pool);
        int n1 = group1.Length, n2 = group2.Length;
        var slack = TieSlack.Of(difference, spread);
        long greater = 1, less = 1, both = 1;

        // Choosing the smaller group takes fewer draws; the other one is what is left.
        var few = Math.Min(n1, n2);
        double perSum = (1.0 / n1) + (1.0 / n2), offset = total / n2;
        ResampleBlocks.Run(resamples, threads, chance, (start, end, stream) =>
        {
            var sums = new double[end - start];
            ChosenSums((double[])pool.Clone(), few, stream, sums);
            long above = 0, below = 0, far = 0;
            foreach (var chosen in sums)
            {
                var statistic = ((few == n1 ? chosen : total - chosen) * perSum) - offset;
                above += statistic >= difference - slack ? 1 : 0;
                below += statistic <= difference + slack ? 1 : 0;
                far += Math.Abs(statistic) >= Math.Abs(difference) - slack ? 1 : 0;
            }

            Interlocked.Add(ref greater, above);
            Interlocked.Add(ref less, below);
            Interlocked.Add(ref both, far);
        });
        return new RandomizationResult
        {
            Method = MonteCarloMethod,
            Observed = difference,
            Assignments = Choices.Binomial(pool.Length, n1),
            Compared = resamples + 1L,
            CountGreater = greater,
            CountLess = less,
            CountTwoSided = both,
        };
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void ChosenSums(double[] values, int chosen, Xoshiro256 stream, Span<double> sums)
    {
        var words = new uint[chosen];
        for (var i = 0; i < sums.Length; i++)
        {
            stream.Fill(words);
            sums[i] = Shuffle.PartialSum(values, words);
        }
    }

    // Values minus the first one: an offset common to all would cost digits and changes nothing.
    private static double[] Centred(ReadOnlySpan<double> group1, ReadOnlySpan<double> group2, out double? observed, out double spread)
    {
        Finite.Require(group1, nameof(group1));
        Finite.Require(group2, nameof(group2));
        observed = null;
        spread = 0;
        if (group1.IsEmpty || group2.IsEmpty)
            return [];
        double[] pool = [.. group1, .. group2];
        var origin = pool[0];
        foreach (ref var value in pool.AsSpan())
        {
            value -= origin;
            spread = Math.Max(spread, Math.Abs(value));
        }

        if (!double.IsFinite(spread * pool.Length))
            throw new ArgumentException("The spread of the values is beyond the range of numbers.", nameof(group1));
        observed = (Sum(pool.AsSpan(0, group1.Length)) / group1.Length) - (Sum(pool.AsSpan(group1.Length)) / group2.Length);
        return pool;
    }

    private static double Sum(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
            sum += value;
        return sum;
    }
}
