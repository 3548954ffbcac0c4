using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Description;

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
            throw new ArgumentException($"Each case needs its window and its start: {k} series, {windows.Count} windows, {actualStarts.Count} starts.", nameof(windows));
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

    /// <summary>mean(B) − mean(A) of every case with every start of every tier's window.</summary>
    private sealed class StartTable
    {
        private readonly double[][][] _difference;
        private readonly IReadOnlyList<int[]> _windows;
        private readonly IReadOnlyList<int> _actual;

        public StartTable(IReadOnlyList<double[]> series, IReadOnlyList<int[]> windows, IReadOnlyList<int> actual, bool orderDrawn)
        {
            _windows = windows;
            _actual = actual;
            var k = series.Count;
            _difference = new double[k][][];
            for (var c = 0; c < k; c++)
            {
                Finite.Require(series[c], nameof(series));
                var centred = RandomizationTest.Centred(series[c], out var spread);
                Spread = Math.Max(Spread, spread);
                Observed += Difference(centred, actual[c]);
                _difference[c] = new double[k][];
                for (var tier = 0; tier < k; tier++)
                {
                    _difference[c][tier] = tier == c || orderDrawn
                        ? [.. windows[tier].Select(start => Difference(centred, start))]
                        : [];
                }
            }
        }

        public double Observed { get; }

        public double Spread { get; }

        public double Count(bool orderDrawn)
        {
            var count = orderDrawn ? Choices.Factorial(_windows.Count) : 1;
            foreach (var window in _windows)
                count *= window.Length;
            return count;
        }

        public bool AdmitsActual(bool orderDrawn)
        {
            var used = new bool[_windows.Count];
            return Place(0);

            bool Place(int at)
            {
                if (at == used.Length)
                    return true;
                for (var tier = 0; tier < used.Length; tier++)
                {
                    if (used[tier] || (!orderDrawn && tier != at) || !_windows[tier].Contains(_actual[at]))
                        continue;
                    used[tier] = true;
                    if (Place(at + 1))
                        return true;
                    used[tier] = false;
                }

                return false;
            }
        }

        public void VisitAll(bool orderDrawn, Action<double> visit)
        {
            var used = new bool[_windows.Count];
            Place(0, 0);

            void Place(int at, double sum)
            {
                if (at == used.Length)
                {
                    visit(sum);
                    return;
                }

                for (var tier = 0; tier < used.Length; tier++)
                {
                    if (used[tier] || (!orderDrawn && tier != at))
                        continue;
                    used[tier] = true;
                    foreach (var difference in _difference[at][tier])
                        Place(at + 1, sum + difference);
                    used[tier] = false;
                }
            }
        }

        public double Draw(int[] tiers, Xoshiro256 stream)
        {
            var sum = 0.0;
            for (var c = 0; c < tiers.Length; c++)
            {
                var candidates = _difference[c][tiers[c]];
                sum += candidates[stream.NextIndex(candidates.Length)];
            }

            return sum;
        }

        private static double Difference(double[] values, int start)
        {
            if (start < 1 || start >= values.Length)
                throw new ArgumentException($"A start lies between 1 and {values.Length - 1}, so that both phases have a value; got {start}.", nameof(start));
            double a = 0, b = 0;
            for (var i = 0; i < values.Length; i++)
            {
                if (i < start)
                    a += values[i];
                else
                    b += values[i];
            }

            return (b / (values.Length - start)) - (a / start);
        }
    }
}
