using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Change;

/// <summary>How much neighbouring swings of one session resemble each other, and how many independent swings that leaves.</summary>
/// <remarks>
/// First-order autoregression within sessions. ρ is found by moments: the pooled ratio Σ d_t d_{t+1} / Σ d_t² of deviations from session
/// means is set equal to its expectation under ρ, which removes the bias toward −1/k of short sessions. It is then shrunk toward what the study
/// knows (0 when nothing) by τ²/(τ² + 1/pairs) with τ = 0.3, and never taken below 0: dependence shall not make a change look surer than
/// independent swings would.
/// The mean of k swings has variance σ² V(k)/k with V = 1 + 2 Σ (1 − j/k) ρ^j, so that k/V swings count.
/// Source: Zieba (2010), Metrology and Measurement Systems 17:3–16, for V; the shrinkage is this program's choice.
/// </remarks>
/// <param name="Lag1">The moment estimate of ρ, not shrunk; null with fewer than 5 pairs of neighbours.</param>
/// <param name="Shrunk">The ρ used, from 0 to below 1.</param>
public sealed record SerialDependence(double? Lag1, double Shrunk)
{
    private const double PriorStandardDeviation = 0.3;
    private const double Highest = 0.95;
    private const int LeastPairs = 5;

    /// <summary>No dependence.</summary>
    public static SerialDependence None { get; } = new(null, 0);

    /// <summary>V(k): the variance of a mean of k swings over that of independent ones.</summary>
    public double Inflation(int k) => Inflation(k, Shrunk);

    /// <summary>k/V(k): how many independent swings k dependent ones are worth.</summary>
    public double EffectiveCount(int k) => k / Inflation(k);

    /// <summary>Estimates ρ from sessions, each with its swings in time order, all finite.</summary>
    /// <param name="sessions">Of one player, or of all players of a study to learn its <see cref="Lag1"/>.</param>
    /// <param name="expected">The ρ that the study expects, toward which the estimate is shrunk; null for 0.</param>
    public static SerialDependence Of(IReadOnlyList<double[]> sessions, double? expected = null)
    {
        var prior = Math.Clamp(expected ?? 0, 0, Highest);
        var (products, squares) = (new CompensatedSum(), new CompensatedSum());
        var pairs = 0;
        foreach (var session in sessions.Where(s => s.Length > 2))
        {
            var summary = Summary.OfChecked(session);
            squares.Add(summary.SumOfSquares);
            for (var i = 1; i < session.Length; i++)
                products.Add(Deviation(session[i - 1], summary) * Deviation(session[i], summary));
            pairs += session.Length - 1;
        }

        if (pairs < LeastPairs || !(squares.Value > 0))
            return new SerialDependence(null, prior);
        var lengths = sessions.Where(s => s.Length > 2).CountBy(s => s.Length).ToArray();
        var observed = products.Value / squares.Value;
        double Excess(double rho) => ExpectedRatio(lengths, rho) - observed;
        var estimate = Excess(-Highest) >= 0 ? -Highest : Excess(Highest) <= 0 ? Highest : BracketedRoot.Solve(Excess, -Highest, Highest);
        var weight = PriorStandardDeviation * PriorStandardDeviation / ((PriorStandardDeviation * PriorStandardDeviation) + (1.0 / pairs));
        return new SerialDependence(estimate, Math.Max(0, (weight * estimate) + ((1 - weight) * prior)));
    }

    private static double Deviation(double x, Summary summary) => x - summary.Origin - summary.MeanAboveOrigin;

    private static double Inflation(int k, double rho)
    {
        var sum = 1.0;
        var power = 1.0;
        for (var j = 1; j < k; j++)
        {
            power *= rho;
            sum += 2 * (1 - (j / (double)k)) * power;
        }

        return sum;
    }

    /// <summary>E Σ d_t d_{t+1} / E Σ d_t², d the deviations from session means, under correlations ρ^|i − j|.</summary>
    private static double ExpectedRatio(KeyValuePair<int, int>[] lengths, double rho)
    {
        double products = 0, squares = 0;
        foreach (var (k, count) in lengths)
        {
            // Row means of the correlation matrix: c_i = Σ_j ρ^|i−j| / k, by sums S_n = 1 + ρ + … + ρ^n; grand mean c = V/k.
            var sums = new double[k];
            var power = sums[0] = 1;
            for (var j = 1; j < k; j++)
                sums[j] = sums[j - 1] + (power *= rho);
            double RowMean(int i) => (sums[i] + sums[k - 1 - i] - 1) / k;
            var grand = 0.0;
            for (var i = 0; i < k; i++)
                grand += RowMean(i) / k;
            squares += count * k * (1 - grand);
            for (var i = 1; i < k; i++)
                products += count * (rho - RowMean(i - 1) - RowMean(i) + grand);
        }

        return products / squares;
    }
}
