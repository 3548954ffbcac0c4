using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Description;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Randomization test of one case: the observed statistic among its values under every admissible assignment.</summary>
/// <remarks>
/// Valid without any assumption on distribution or serial dependence, and only when the assignment was drawn from the scheme before data were
/// taken. Two-sided p counts |statistic| ≥ |observed|. Source: Edgington and Onghena (2007), Randomization Tests, 4th ed.
/// </remarks>
public static class RandomizationTest
{
    /// <summary>Method word of a test that went through all assignments.</summary>
    public const string ExactMethod = "randomization-exact";

    /// <summary>Method word of a test on a random sample of assignments.</summary>
    public const string MonteCarloMethod = "randomization";

    /// <summary>Largest number of assignments that is gone through completely by <see cref="Of"/>.</summary>
    public const double LargestExact = 2_000_000;

    /// <summary>The test of one case: exact up to <see cref="LargestExact"/> assignments, else on a random sample.</summary>
    /// <param name="values">One value an occasion in order of time, all finite.</param>
    /// <param name="actual">The assignment that was drawn and carried out.</param>
    /// <param name="scheme">The set it was drawn from.</param>
    /// <param name="statistic">What is compared, chosen beforehand.</param>
    /// <param name="chance">The stream of a random sample; it is split, not drawn from, and not needed for an exact test.</param>
    /// <param name="resamples">Size of a random sample.</param>
    /// <param name="threads">Threads to use for a random sample; they do not change the result.</param>
    /// <returns>The test; never undefined, because a scheme always admits both conditions.</returns>
    /// <exception cref="ArgumentException">Lengths differ, a value is not finite, or the scheme does not admit the actual assignment.</exception>
    public static RandomizationResult Of(
        ReadOnlySpan<double> values,
        ReadOnlySpan<bool> actual,
        AssignmentScheme scheme,
        ConditionStatistic statistic = ConditionStatistic.MeanDifference,
        Xoshiro256? chance = null,
        int resamples = 9999,
        int threads = 1)
    {
        if (values.Length != scheme.Length || actual.Length != scheme.Length)
            throw new ArgumentException($"The scheme has {scheme.Length} occasions; got {values.Length} values and {actual.Length} flags.", nameof(values));
        Finite.Require(values, nameof(values));
        if (!scheme.Admits(actual))
            throw new ArgumentException("The actual assignment is not one the scheme admits, so it cannot have been drawn from it.", nameof(actual));
        var centred = Centred(values, out var spread);
        var contrast = new ConditionContrast(centred, statistic);
        var observed = contrast.Of(actual);
        var tally = new Tally(observed, TieSlack.Of(observed, spread));
        if (scheme.Count <= LargestExact)
        {
            scheme.VisitAll(assignment => tally.Add(contrast.Of(assignment)));
            return tally.Result(ExactMethod, scheme.Count, exact: true);
        }

        if (chance is null)
            throw new ArgumentException($"{scheme.Count} assignments are too many to go through: a stream of chance is needed.", nameof(chance));
        ArgumentOutOfRangeException.ThrowIfLessThan(resamples, 1);
        tally.Add(observed);
        ResampleBlocks.Run(resamples, threads, chance, (start, end, stream) =>
        {
            var own = new ConditionContrast(centred, statistic);
            var part = tally.Fresh();
            var assignment = new bool[scheme.Length];
            for (var i = start; i < end; i++)
            {
                scheme.Draw(stream, assignment);
                part.Add(own.Of(assignment));
            }

            lock (tally)
                tally.Add(part);
        });
        return tally.Result(MonteCarloMethod, scheme.Count, exact: false);
    }

    /// <summary>The statistic under every admissible assignment, in the order of the scheme.</summary>
    /// <exception cref="ArgumentException">Lengths differ or a value is not finite.</exception>
    public static IReadOnlyList<double> Distribution(
        ReadOnlySpan<double> values, AssignmentScheme scheme, ConditionStatistic statistic = ConditionStatistic.MeanDifference)
    {
        if (values.Length != scheme.Length)
            throw new ArgumentException($"The scheme has {scheme.Length} occasions; got {values.Length} values.", nameof(values));
        Finite.Require(values, nameof(values));
        var contrast = new ConditionContrast(Centred(values, out _), statistic);
        var all = new List<double>();
        scheme.VisitAll(assignment => all.Add(contrast.Of(assignment)));
        return all;
    }

    // Values minus the first one: an offset common to all would cost digits and changes no difference.
    internal static double[] Centred(ReadOnlySpan<double> values, out double spread)
    {
        var centred = new double[values.Length];
        spread = 0;
        for (var i = 0; i < centred.Length; i++)
        {
            centred[i] = values[i] - values[0];
            spread = Math.Max(spread, Math.Abs(centred[i]));
        }

        return double.IsFinite(spread * Math.Max(1, centred.Length))
            ? centred
            : throw new ArgumentException("The spread of the values is beyond the range of numbers.", nameof(values));
    }
}
