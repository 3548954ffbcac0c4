using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.EffectSizes;

/// <summary>Standardized difference of two independent means by the pooled standard deviation, with and without Hedges' correction.</summary>
/// <remarks>
/// d = (mean(after) − mean(before))/s_pooled, ν = n₁ + n₂ − 2, g = J(ν) d, Var(d) = (n₁ + n₂)/(n₁ n₂) + d²/(2(n₁ + n₂)).
/// Treats swings as independent and the two scatters as equal. Sources: Hedges and Olkin (1985), ch. 5; Borenstein et al. (2009), ch. 4.
/// </remarks>
public static class HedgesG
{
    /// <summary>Method word of <see cref="Uncorrected"/>.</summary>
    public const string UncorrectedMethod = "standardized-difference-pooled";

    /// <summary>Method word of <see cref="Pooled"/>.</summary>
    public const string PooledMethod = "hedges-g-pooled";

    /// <summary>Method word of <see cref="PooledLargeSample"/>.</summary>
    public const string LargeSampleMethod = "hedges-g-pooled-large-sample";

    /// <summary>d without correction; interval by the noncentral t distribution.</summary>
    /// <returns>Undefined with an empty condition, without a degree of freedom, or when nothing varies.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Uncorrected(IndependentContrast contrast, double confidence = 0.95) =>
        Noncentral(UncorrectedMethod, contrast, confidence, corrected: false);

    /// <summary>g with the exact correction J; interval by the noncentral t distribution, limits times J.</summary>
    /// <returns>Undefined with an empty condition, with fewer than two degrees of freedom, or when nothing varies.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Pooled(IndependentContrast contrast, double confidence = 0.95) =>
        Noncentral(PooledMethod, contrast, confidence, corrected: true);

    /// <summary>g with J ≈ 1 − 3/(4ν − 1); interval g ∓ z √(J² Var(d)).</summary>
    /// <returns>Undefined with an empty condition, with fewer than two degrees of freedom, or when nothing varies.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate PooledLargeSample(IndependentContrast contrast, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        if (Unsupported(contrast, corrected: true) is { } reason)
            return Estimate.NotDefined(LargeSampleMethod, reason);
        var d = contrast.Difference / contrast.PooledStandardDeviation!.Value;
        var j = HedgesCorrection.Approximate(contrast.PooledDegreesOfFreedom);
        var se = j * Math.Sqrt(VarianceOfUncorrected(contrast, d));
        return Estimate.Of(
            LargeSampleMethod, j * d, se, Limits.Normal(j * d, se, confidence), contrast.PooledP, contrast.PooledDegreesOfFreedom);
    }

    /// <summary>(n₁ + n₂)/(n₁ n₂) + d²/(2(n₁ + n₂)).</summary>
    internal static double VarianceOfUncorrected(IndependentContrast contrast, double d) =>
        contrast.InverseCounts + (d * d / (2 * (contrast.Before.Count + contrast.After.Count)));

    private static Estimate Noncentral(string method, IndependentContrast contrast, double confidence, bool corrected)
    {
        Finite.RequireConfidence(confidence);
        if (Unsupported(contrast, corrected) is { } reason)
            return Estimate.NotDefined(method, reason);
        var df = contrast.PooledDegreesOfFreedom;
        var d = contrast.Difference / contrast.PooledStandardDeviation!.Value;
        if (!double.IsFinite(d))
            return Estimate.Of(method, d);
        var j = corrected ? HedgesCorrection.Exact(df) : 1;
        var se = j * Math.Sqrt(VarianceOfUncorrected(contrast, d));
        var interval = Limits.Noncentral(contrast.PooledT!.Value, df, j * Math.Sqrt(contrast.InverseCounts), confidence);
        return Estimate.Of(method, j * d, se, interval, contrast.PooledP, df);
    }

    private static string? Unsupported(IndependentContrast contrast, bool corrected)
    {
        if (contrast.Lacks(1, 1) is { } reason)
            return reason;
        var least = corrected ? 2 : 1;
        if (contrast.PooledDegreesOfFreedom < least)
            return $"needs at least {least + 2} values in all, got {contrast.Before.Count + contrast.After.Count}";
        return contrast.PooledStandardDeviation is > 0 ? null : "the values never vary within a condition";
    }
}
