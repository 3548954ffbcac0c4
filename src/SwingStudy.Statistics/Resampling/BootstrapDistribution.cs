using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Resampling;

/// <summary>A statistic, its values in resampled data, and the intervals read from them.</summary>
/// <remarks>Sources: Efron and Tibshirani (1993), An Introduction to the Bootstrap; Davison and Hinkley (1997), Bootstrap Methods and their Application.</remarks>
public sealed record BootstrapDistribution
{
    private readonly double[] _sorted;

    private BootstrapDistribution(double observed, double[] replicates)
    {
        Observed = observed;
        Replicates = replicates;
        _sorted = (double[])replicates.Clone();
        Array.Sort(_sorted);
    }

    /// <summary>The statistic of the data as they are.</summary>
    public double Observed { get; }

    /// <summary>The statistic of each resample, in order of drawing.</summary>
    public IReadOnlyList<double> Replicates { get; }

    /// <summary>Mean of the replicates minus the observed value.</summary>
    public double Bias => Mean - Observed;

    /// <summary>Mean of the replicates.</summary>
    public double Mean => Scaled().Mean!.Value * Scale;

    /// <summary>Standard deviation of the replicates, divisor R − 1; null with one replicate.</summary>
    public double? StandardError => Scaled().StandardDeviation * Scale;

    /// <summary>Share of replicates strictly below the observed value; a difference within rounding counts as none.</summary>
    public double ShareBelow => (double)CountBelow(Observed - Rounding) / _sorted.Length;

    /// <summary>Share of replicates below the observed value, those equal to it counted half: steadier for statistics with few distinct values.</summary>
    public double ShareBelowTiesHalf => (CountBelow(Observed - Rounding) + CountBelow(Observed + Rounding)) / 2.0 / _sorted.Length;

    /// <summary>Bias-correction constant Φ⁻¹(<see cref="ShareBelow"/>); null when all replicates lie on one side.</summary>
    public double? Z0 => Quantile(ShareBelow);

    /// <summary>The distribution from replicates computed elsewhere.</summary>
    /// <param name="observed">The statistic of the data.</param>
    /// <param name="replicates">The statistic of each resample, at least one.</param>
    /// <exception cref="ArgumentException">There are no replicates or a value is not finite.</exception>
    public static BootstrapDistribution Of(double observed, ReadOnlySpan<double> replicates)
    {
        if (replicates.IsEmpty)
            throw new ArgumentException("At least one resample is needed.", nameof(replicates));
        Finite.RequireComputed([observed], nameof(observed));
        Finite.RequireComputed(replicates, nameof(replicates));
        return new BootstrapDistribution(observed, replicates.ToArray());
    }

    /// <summary>Percentile interval: the quantiles of the replicates themselves.</summary>
    /// <exception cref="ArgumentException">The confidence is no share.</exception>
    public Interval Percentile(double confidence = 0.95, QuantileRule rule = QuantileRule.HyndmanFan7)
    {
        Finite.RequireConfidence(confidence);
        var tail = (1 - confidence) / 2;
        return new Interval(SortedQuantile.At(_sorted, tail, rule), SortedQuantile.At(_sorted, 1 - tail, rule), confidence);
    }

    /// <summary>Basic interval: the percentile interval mirrored at the observed value.</summary>
    /// <exception cref="ArgumentException">The confidence is no share.</exception>
    public Interval Basic(double confidence = 0.95, QuantileRule rule = QuantileRule.HyndmanFan7)
    {
        var percentile = Percentile(confidence, rule);
        return new Interval((2 * Observed) - percentile.High, (2 * Observed) - percentile.Low, confidence);
    }

    /// <summary>The shares of replicates at which the BCa limits are read: Φ(z₀ + (z₀ + z)/(1 − a(z₀ + z))) for z = ±z(confidence).</summary>
    /// <param name="acceleration">The acceleration a, for instance by <see cref="Jackknife"/>.</param>
    /// <param name="confidence">Level of the interval, a share.</param>
    /// <param name="tiesHalf">Takes <see cref="ShareBelowTiesHalf"/> for z₀ in place of <see cref="ShareBelow"/>.</param>
    /// <returns>Lower and upper share; null when all replicates lie on one side of the observed value or a limit leaves the scale.</returns>
    /// <exception cref="ArgumentException">The confidence is no share or the acceleration is not finite.</exception>
    public Interval? BcaLevels(double acceleration, double confidence = 0.95, bool tiesHalf = false)
    {
        Finite.RequireConfidence(confidence);
        Finite.RequireComputed([acceleration], nameof(acceleration));
        return Levels(tiesHalf ? ShareBelowTiesHalf : ShareBelow, acceleration, confidence);
    }

    /// <summary>The BCa levels for a share of replicates below the observed value.</summary>
    internal static Interval? Levels(double shareBelow, double acceleration, double confidence)
    {
        if (Quantile(shareBelow) is not { } z0)
            return null;
        var z = Normal.Critical(confidence);
        double below = 1 - (acceleration * (z0 - z)), above = 1 - (acceleration * (z0 + z));
        return below > 0 && above > 0
            ? new Interval(Normal.Cdf(z0 + ((z0 - z) / below)), Normal.Cdf(z0 + ((z0 + z) / above)), confidence)
            : null;
    }

    /// <summary>Bias-corrected and accelerated interval.</summary>
    /// <remarks>Source: Efron (1987), JASA 82:171–185.</remarks>
    /// <param name="acceleration">The acceleration a, for instance by <see cref="Jackknife"/>.</param>
    /// <param name="confidence">Level of the interval, a share.</param>
    /// <param name="rule">How the quantiles are read.</param>
    /// <param name="tiesHalf">Takes <see cref="ShareBelowTiesHalf"/> for z₀ in place of <see cref="ShareBelow"/>.</param>
    /// <returns>The interval; null when <see cref="BcaLevels"/> gives none.</returns>
    /// <exception cref="ArgumentException">The confidence is no share or the acceleration is not finite.</exception>
    public Interval? Bca(double acceleration, double confidence = 0.95, QuantileRule rule = QuantileRule.HyndmanFan7, bool tiesHalf = false)
    {
        if (BcaLevels(acceleration, confidence, tiesHalf) is not { } levels)
            return null;
        return new Interval(SortedQuantile.At(_sorted, levels.Low, rule), SortedQuantile.At(_sorted, levels.High, rule), confidence);
    }

    /// <summary>Studentized interval: the observed value minus quantiles of (t* − t)/se* times the observed standard error.</summary>
    /// <remarks>Source: Hall (1988), Annals of Statistics 16:927–953.</remarks>
    /// <param name="observed">The statistic of the data.</param>
    /// <param name="standardError">Its standard error, positive.</param>
    /// <param name="replicates">The statistic of each resample.</param>
    /// <param name="standardErrors">The standard error of each resample; resamples without scatter (0) are left out.</param>
    /// <param name="confidence">Level of the interval, a share.</param>
    /// <param name="rule">How the quantiles are read.</param>
    /// <returns>The interval; null when no resample has scatter.</returns>
    /// <exception cref="ArgumentException">Lengths differ, a value is not finite, or a standard error is negative or the observed one not positive.</exception>
    public static Interval? Studentized(
        double observed, double standardError, ReadOnlySpan<double> replicates, ReadOnlySpan<double> standardErrors,
        double confidence = 0.95, QuantileRule rule = QuantileRule.HyndmanFan7)
    {
        Finite.RequireConfidence(confidence);
        Finite.RequireComputed([observed, standardError], nameof(observed));
        Finite.RequireComputed(replicates, nameof(replicates));
        Finite.RequireComputed(standardErrors, nameof(standardErrors));
        if (replicates.Length != standardErrors.Length || !(standardError > 0) || standardErrors.ContainsAnyInRange(double.MinValue, -double.Epsilon))
            throw new ArgumentException("Each resample needs its standard error, none negative, and the data a positive one.", nameof(standardErrors));
        var pivots = new List<double>(replicates.Length);
        for (var i = 0; i < replicates.Length; i++)
        {
            if (standardErrors[i] > 0 && double.IsFinite((replicates[i] - observed) / standardErrors[i]))
                pivots.Add((replicates[i] - observed) / standardErrors[i]);
        }

        if (pivots.Count == 0)
            return null;
        var sorted = pivots.ToArray();
        Array.Sort(sorted);
        var tail = (1 - confidence) / 2;
        return new Interval(
            observed - (standardError * SortedQuantile.At(sorted, 1 - tail, rule)),
            observed - (standardError * SortedQuantile.At(sorted, tail, rule)),
            confidence);
    }

    private double Scale => Math.Max(Math.Abs(_sorted[0]), Math.Abs(_sorted[^1])) is var largest && largest is > 1e50 or (> 0 and < 1e-100) ? largest : 1;

    private Summary Scaled()
    {
        var scale = Scale;
        return scale == 1 ? Summary.Of(_sorted) : Summary.Of([.. _sorted.Select(value => value / scale)]);
    }

    // Resamples of the same values in another order give the same statistic up to rounding.
    private double Rounding => Math.Max(
        1e-12 * Math.Max(Math.Abs(_sorted[0] - Observed), Math.Abs(_sorted[^1] - Observed)), 4 * (Math.BitIncrement(Math.Abs(Observed)) - Math.Abs(Observed)));

    private int CountBelow(double value)
    {
        int low = 0, high = _sorted.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (_sorted[middle] < value)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }

    private static double? Quantile(double share) => share is > 0 and < 1 ? Normal.Quantile(share) : null;
}
