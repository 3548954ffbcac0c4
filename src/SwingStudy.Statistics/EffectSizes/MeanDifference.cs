using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.EffectSizes;

/// <summary>Difference of two means in the unit of the values, after − before.</summary>
/// <remarks>
/// Treats swings as independent of each other. Sources: Student (1908), Biometrika 6:1–25 (pooled, paired); Welch (1947), Biometrika 34:28–35.
/// </remarks>
public static class MeanDifference
{
    /// <summary>Method word of <see cref="Pooled"/>.</summary>
    public const string PooledMethod = "mean-difference-pooled";

    /// <summary>Method word of <see cref="Welch"/>.</summary>
    public const string WelchMethod = "mean-difference-welch";

    /// <summary>Method word of <see cref="Paired"/>.</summary>
    public const string PairedMethod = "mean-difference-paired";

    /// <summary>One variance for both conditions: SE = s_pooled √(1/n₁ + 1/n₂), n₁ + n₂ − 2 degrees of freedom.</summary>
    /// <returns>Undefined with an empty condition; without SE, interval and p when no degree of freedom is left.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Pooled(IndependentContrast contrast, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        if (contrast.Lacks(1, 1) is { } reason)
            return Estimate.NotDefined(PooledMethod, reason);
        return contrast.PooledStandardDeviation is { } s
            ? WithStudent(PooledMethod, contrast.Difference, s * Math.Sqrt(contrast.InverseCounts), contrast.PooledDegreesOfFreedom, confidence)
            : Estimate.Of(PooledMethod, contrast.Difference);
    }

    /// <summary>A variance for each condition: SE² = s₁²/n₁ + s₂²/n₂, degrees of freedom by Welch and Satterthwaite.</summary>
    /// <returns>Undefined with an empty condition; without SE, interval and p when a condition has one value.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Welch(IndependentContrast contrast, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        if (contrast.Lacks(1, 1) is { } reason)
            return Estimate.NotDefined(WelchMethod, reason);
        if (contrast.Before.Variance is not { } v1 || contrast.After.Variance is not { } v2)
            return Estimate.Of(WelchMethod, contrast.Difference);
        var (a, b) = (v1 / contrast.Before.Count, v2 / contrast.After.Count);
        var total = a + b;
        var df = total > 0
            ? 1 / ((a / total * (a / total) / (contrast.Before.Count - 1)) + (b / total * (b / total) / (contrast.After.Count - 1)))
            : contrast.PooledDegreesOfFreedom;
        return WithStudent(WelchMethod, contrast.Difference, Math.Sqrt(total), df, confidence);
    }

    /// <summary>Mean of the paired differences: SE = s_diff/√n, n − 1 degrees of freedom.</summary>
    /// <returns>Undefined without pairs; without SE, interval and p with one pair.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Paired(PairedContrast contrast, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        if (contrast.Lacks(1) is { } reason)
            return Estimate.NotDefined(PairedMethod, reason);
        return contrast.StandardDeviationOfDifferences is { } s
            ? WithStudent(PairedMethod, contrast.Difference, s / Math.Sqrt(contrast.Count), contrast.DegreesOfFreedom, confidence)
            : Estimate.Of(PairedMethod, contrast.Difference);
    }

    private static Estimate WithStudent(string method, double difference, double se, double df, double confidence)
    {
        if (!double.IsFinite(difference) || !double.IsFinite(se))
            return Estimate.Of(method, difference);

        // Without scatter the interval is a point; p says 1 without a difference, and 0 would claim what no data can.
        double? p = se > 0 ? StudentT.TwoSided(difference / se, df) : difference == 0 ? 1 : null;
        return Estimate.Of(method, difference, se, Limits.StudentT(difference, se, df, confidence), p, df);
    }
}
