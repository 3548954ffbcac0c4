using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Resampling;

/// <summary>Randomization tests of a multiple-baseline design: the mean over cases of mean(B) − mean(A).</summary>
/// <remarks>
/// Windows of starts can be drawn within cases, cases can be drawn to windows, or both. Sources: Wampold and Worsham (1986), Behavioral Assessment
/// 8:135–143 (order); Marascuilo and Busk (1988), ibid. 10:1–28 (starts); Koehler and Levin (1998), Psychological Methods 3:206–217 (both).
/// </remarks>
public static class MultipleBaselineTest
{
    /// <summary>Method word of a test that went through all assignments.</summary>
    public const string ExactMethod = "randomization-multiple-baseline-exact";

    /// <summary>Method word of a test on a random sample of assignments.</summary>
    public const string MonteCarloMethod = "randomization-multiple-baseline";

    /// <summary>The test.</summary>
    /// <param name="series">One series a case, in order of time, all finite.</param>
    /// <param name="windows">
    /// Admissible 0-based starts of B, one set a case. With <paramref name="orderDrawn"/> the sets belong to tiers, and cases are drawn to tiers.
    /// </param>
    /// <param name="actualStarts">The start carried out, one a case.</param>
    /// <param name="orderDrawn">Whether it was drawn which case has which set.</param>
    /// <param name="chance">The stream of a random sample; not needed up to 2,000,000 assignments.</param>
    /// <param name="resamples">Size of a random sample.</param>
    /// <returns>Undefined without cases.</returns>
    /// <exception cref="ArgumentException">
    /// Numbers of cases differ, a value is not finite, a start is out of range, or the actual starts cannot have been drawn from the windows.
    /// </exception>
    public static RandomizationResult Of(
        IReadOnlyList<double[]> series,
        IReadOnlyList<int[]> windows,
        IReadOnlyList<int> actualStarts,
        bool orderDrawn = false,
        Xoshiro256? chance = null,
        int resamples = 9999)
    {
        var k = series.Count;
        if (windows.Count != k || actualStarts.Count != k)
        {
            throw new ArgumentException(
                $"Each case needs its window and its start: {k} series, {windows.Count} windows, {actualStarts.Count} starts.", nameof(windows));
        }

        if (k == 0)
            return RandomizationResult.NotDefined(ExactMethod, "needs at least one case, got none");
        var table = new StartTable(series, windows, actualStarts, orderDrawn);
        if (!table.AdmitsActual(orderDrawn))
            throw new ArgumentException("The actual starts cannot have been drawn from the windows.", nameof(actualStarts));
        var observed = table.Observed / k;
        var tally = new Tally(observed, TieSlack.Of(observed, table.Spread));
        if (table.Count(orderDrawn) <= RandomizationTest.LargestExact)
        {
            table.VisitAll(orderDrawn, sum => tally.Add(sum / k));
            return tally.Result(ExactMethod, table.Count(orderDrawn), exact: true);
        }

        if (chance is null)
            throw new ArgumentException($"{table.Count(orderDrawn)} assignments are too many to go through: a stream of chance is needed.", nameof(chance));
        ArgumentOutOfRangeException.ThrowIfLessThan(resamples, 1);
        tally.Add(observed);
        var stream = chance.Split("multiple-baseline");
        var tiers = Enumerable.Range(0, k).ToArray();
        for (var i = 0; i < resamples; i++)
        {
            if (orderDrawn)
                Shuffle.All(tiers.AsSpan(), stream);
            tally.Add(table.Draw(tiers, stream) / k);
        }

        return tally.Result(MonteCarloMethod, table.Count(orderDrawn), exact: false);
    }
}
