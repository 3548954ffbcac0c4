using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.EffectSizes;

/// <summary>Natural logarithm of mean(after)/mean(before), for values on a ratio scale with positive means.</summary>
/// <remarks>
/// Variances are large-sample (delta method); intervals are normal. Sources: Hedges, Gurevitch and Curtis (1999), Ecology 80:1150–1156;
/// Borenstein et al. (2009), ch. 4; Lajeunesse (2015), Ecology 96:2056–2063.
/// </remarks>
public static class LogResponseRatio
{
    /// <summary>Method word of <see cref="Independent"/>.</summary>
    public const string IndependentMethod = "log-response-ratio";

    /// <summary>Method word of <see cref="IndependentPooled"/>.</summary>
    public const string PooledMethod = "log-response-ratio-pooled";

    /// <summary>Method word of <see cref="IndependentCorrected"/>.</summary>
    public const string CorrectedMethod = "log-response-ratio-corrected";

    /// <summary>Method word of <see cref="Paired"/>.</summary>
    public const string PairedMethod = "log-response-ratio-paired";

    /// <summary>Var = s₂²/(n₂ m₂²) + s₁²/(n₁ m₁²).</summary>
    /// <returns>Undefined with an empty condition or a mean that is not positive; without SE when a condition has one value.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Independent(IndependentContrast contrast, double confidence = 0.95) =>
        Build(IndependentMethod, contrast, confidence, contrast.Before.Variance, contrast.After.Variance, corrected: false);

    /// <summary>As <see cref="Independent"/>, with the pooled variance in both terms.</summary>
    /// <returns>Undefined with an empty condition or a mean that is not positive; without SE when no degree of freedom is left.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate IndependentPooled(IndependentContrast contrast, double confidence = 0.95)
    {
        var pooled = contrast.PooledStandardDeviation is { } s ? s * s : (double?)null;
        return Build(PooledMethod, contrast, confidence, pooled, pooled, corrected: false);
    }

    /// <summary>
    /// Small-sample correction: adds ½(s₂²/(n₂ m₂²) − s₁²/(n₁ m₁²)) to the estimate and ½(s₂⁴/(n₂² m₂⁴) + s₁⁴/(n₁² m₁⁴)) to the variance.
    /// </summary>
    /// <returns>Undefined with fewer than two values in a condition or a mean that is not positive.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate IndependentCorrected(IndependentContrast contrast, double confidence = 0.95) =>
        contrast.Lacks(2, 2) is { } reason
            ? Estimate.NotDefined(CorrectedMethod, reason)
            : Build(CorrectedMethod, contrast, confidence, contrast.Before.Variance, contrast.After.Variance, corrected: true);

    /// <summary>Var = s₂²/(n m₂²) + s₁²/(n m₁²) − 2 r s₁ s₂/(n m₁ m₂).</summary>
    /// <returns>Undefined without pairs or with a mean that is not positive; without SE with one pair.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Paired(PairedContrast contrast, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        if (contrast.Lacks(1) is { } reason)
            return Estimate.NotDefined(PairedMethod, reason);
        var (m1, m2, n) = (contrast.MeanBefore, contrast.MeanAfter, contrast.Count);
        if (!(m1 > 0 && m2 > 0))
            return Estimate.NotDefined(PairedMethod, MeansMustBePositive);
        var logarithm = Math.Log(m2 / m1);
        if (contrast.StandardDeviationBefore is not { } s1 || contrast.StandardDeviationAfter is not { } s2)
            return Estimate.Of(PairedMethod, logarithm);
        var (a, b) = (s1 / m1, s2 / m2);
        var variance = ((a * a) + (b * b) - (2 * (contrast.Correlation ?? 0) * a * b)) / n;
        return WithNormal(PairedMethod, logarithm, Math.Max(0, variance), confidence);
    }

    private const string MeansMustBePositive = "a ratio needs positive means in both conditions";

    private static Estimate Build(
        string method, IndependentContrast contrast, double confidence, double? varianceBefore, double? varianceAfter, bool corrected)
    {
        Finite.RequireConfidence(confidence);
        if (contrast.Lacks(1, 1) is { } reason)
            return Estimate.NotDefined(method, reason);
        var (m1, m2) = (contrast.Before.Mean!.Value, contrast.After.Mean!.Value);
        if (!(m1 > 0 && m2 > 0))
            return Estimate.NotDefined(method, MeansMustBePositive);
        var logarithm = Math.Log(m2 / m1);
        if (varianceBefore is not { } v1 || varianceAfter is not { } v2)
            return Estimate.Of(method, logarithm);
        var a = v1 / m1 / m1 / contrast.Before.Count;
        var b = v2 / m2 / m2 / contrast.After.Count;
        return corrected
            ? WithNormal(method, logarithm + (0.5 * (b - a)), a + b + (0.5 * ((a * a) + (b * b))), confidence)
            : WithNormal(method, logarithm, a + b, confidence);
    }

    private static Estimate WithNormal(string method, double value, double variance, double confidence)
    {
        var se = Math.Sqrt(variance);
        if (!double.IsFinite(value) || !double.IsFinite(se))
            return Estimate.Of(method, value);
        double? p = se > 0 ? Math.Min(1, 2 * Normal.UpperTail(Math.Abs(value) / se)) : value == 0 ? 1 : null;
        return Estimate.Of(method, value, se, Limits.Normal(value, se, confidence), p);
    }
}
