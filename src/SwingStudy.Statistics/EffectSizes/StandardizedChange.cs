using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.EffectSizes;

/// <summary>Standardized mean change of paired values, by each usual standard deviation, all with Hedges' exact correction J(n − 1).</summary>
/// <remarks>
/// The denominators answer different questions and differ widely when the correlation is high; the method word says which was used.
/// Sources: Lakens (2013), Frontiers in Psychology 4:863; Becker (1988); Morris and DeShon (2002); Borenstein et al. (2009), ch. 4.
/// </remarks>
public static class StandardizedChange
{
    /// <summary>Method word of <see cref="ByDifferences"/>.</summary>
    public const string DifferencesMethod = "hedges-g-change-sd";

    /// <summary>Method word of <see cref="ByAverage"/>.</summary>
    public const string AverageMethod = "hedges-g-average-sd";

    /// <summary>Method word of <see cref="ByAverageVariance"/>.</summary>
    public const string AverageVarianceMethod = "hedges-g-average-variance";

    /// <summary>Method word of <see cref="ByRepeatedMeasures"/>.</summary>
    public const string RepeatedMeasuresMethod = "hedges-g-repeated-measures";

    /// <summary>Method word of <see cref="ByBaseline"/>.</summary>
    public const string BaselineMethod = "hedges-g-baseline-sd-paired";

    /// <summary>J · mean change / SD of the changes (d_z); Var = 1/n + g²/(2n); interval by the noncentral t distribution.</summary>
    /// <returns>Undefined with fewer than 3 pairs or changes that never vary.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate ByDifferences(PairedContrast contrast, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        if (Unsupported(contrast, contrast.StandardDeviationOfDifferences, "the changes never vary") is { } reason)
            return Estimate.NotDefined(DifferencesMethod, reason);
        var (n, df) = (contrast.Count, contrast.DegreesOfFreedom);
        var j = HedgesCorrection.Exact(df);
        var g = j * contrast.Difference / contrast.StandardDeviationOfDifferences!.Value;
        if (contrast.T is not { } t || !double.IsFinite(t))
            return Estimate.Of(DifferencesMethod, double.NaN);
        var se = Math.Sqrt((1.0 / n) + (g * g / (2 * n)));
        return Estimate.Of(DifferencesMethod, g, se, Limits.Noncentral(t, df, j / Math.Sqrt(n), confidence), contrast.P, df);
    }

    /// <summary>J · mean change / mean of the two SDs (d_av).</summary>
    /// <remarks>Var = 2(1 − r)/n + g²/(2n), the form for a denominator of single conditions; interval normal.</remarks>
    /// <returns>Undefined with fewer than 3 pairs or values that never vary.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate ByAverage(PairedContrast contrast, double confidence = 0.95) =>
        BySingleConditions(AverageMethod, contrast, (contrast.StandardDeviationBefore + contrast.StandardDeviationAfter) / 2, confidence);

    /// <summary>J · mean change / √((s₁² + s₂²)/2).</summary>
    /// <remarks>Var = 2(1 − r)/n + g²/(2n); interval normal.</remarks>
    /// <returns>Undefined with fewer than 3 pairs or values that never vary.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate ByAverageVariance(PairedContrast contrast, double confidence = 0.95)
    {
        var (s1, s2) = (contrast.StandardDeviationBefore, contrast.StandardDeviationAfter);
        double? s = s1 is { } a && s2 is { } b ? Math.Sqrt(((a * a) + (b * b)) / 2) : null;
        return BySingleConditions(AverageVarianceMethod, contrast, s, confidence);
    }

    /// <summary>J · mean change / SD before, paired (Becker's standardized mean change, raw-score standardization).</summary>
    /// <remarks>Var = 2(1 − r)/n + g²/(2n); interval normal.</remarks>
    /// <returns>Undefined with fewer than 3 pairs or a baseline that never varies.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate ByBaseline(PairedContrast contrast, double confidence = 0.95) =>
        BySingleConditions(BaselineMethod, contrast, contrast.StandardDeviationBefore, confidence);

    /// <summary>J · mean change / (SD of the changes / √(2(1 − r))): the within-condition SD that the changes imply (d_rm).</summary>
    /// <remarks>Var(d) = (1/n + d²/(2n)) 2(1 − r), Var(g) = J² Var(d); interval normal.</remarks>
    /// <returns>Undefined with fewer than 3 pairs, changes that never vary, or a correlation of 1 or none.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate ByRepeatedMeasures(PairedContrast contrast, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        if (Unsupported(contrast, WithinStandardDeviation(contrast), "the within-condition scatter that the changes imply is zero or unknown") is { } reason)
            return Estimate.NotDefined(RepeatedMeasuresMethod, reason);
        var d = contrast.Difference / WithinStandardDeviation(contrast)!.Value;
        var j = HedgesCorrection.Exact(contrast.DegreesOfFreedom);
        var se = j * Math.Sqrt(VarianceOfRepeated(contrast, d));
        return Finish(RepeatedMeasuresMethod, contrast, j * d, se, confidence);
    }

    /// <summary>SD of the changes / √(2(1 − r)); null when either is missing or r = 1.</summary>
    public static double? WithinStandardDeviation(PairedContrast contrast) =>
        contrast.StandardDeviationOfDifferences is { } s && contrast.Correlation is < 1 and var r ? s / Math.Sqrt(2 * (1 - r)) : null;

    /// <summary>(1/n + d²/(2n)) 2(1 − r).</summary>
    public static double VarianceOfRepeated(PairedContrast contrast, double d) =>
        ((1.0 / contrast.Count) + (d * d / (2 * contrast.Count))) * 2 * (1 - (contrast.Correlation ?? 0));

    private static Estimate BySingleConditions(string method, PairedContrast contrast, double? s, double confidence)
    {
        Finite.RequireConfidence(confidence);
        if (Unsupported(contrast, s, "the values never vary") is { } reason)
            return Estimate.NotDefined(method, reason);
        var g = HedgesCorrection.Exact(contrast.DegreesOfFreedom) * contrast.Difference / s!.Value;
        double? se = contrast.Correlation is { } r ? Math.Sqrt((2 * (1 - r) / contrast.Count) + (g * g / (2 * contrast.Count))) : null;
        return Finish(method, contrast, g, se, confidence);
    }

    private static Estimate Finish(string method, PairedContrast contrast, double g, double? se, double confidence)
    {
        Interval? interval = se is { } error && double.IsFinite(error) && double.IsFinite(g) ? Limits.Normal(g, error, confidence) : null;
        return Estimate.Of(method, g, se, interval, contrast.P, contrast.DegreesOfFreedom);
    }

    private static string? Unsupported(PairedContrast contrast, double? s, string constant) =>
        contrast.Lacks(3) ?? (s is > 0 ? null : constant);
}
