using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.EffectSizes;

/// <summary>Standardized difference of two independent means by the standard deviation before: Glass's Δ.</summary>
/// <remarks>
/// Δ = (mean(after) − mean(before))/s(before), ν = n(before) − 1. Only baseline scatter divides: a cue that also steadies the player does not
/// change the yardstick. Var(Δ) = 1/n₁ + 1/n₂ + Δ²/(2 ν). Interval: t = Δ/h has a noncentral t distribution with ν degrees of freedom,
/// h² = 1/n(before) + s(after)²/(n(after) s(before)²). Treats swings as independent.
/// Sources: Glass (1976), Educational Researcher 5(10):3–8; Hedges and Olkin (1985), ch. 5.
/// </remarks>
public static class GlassDelta
{
    /// <summary>Method word of <see cref="Uncorrected"/>.</summary>
    public const string UncorrectedMethod = "glass-delta";

    /// <summary>Method word of <see cref="Corrected"/>.</summary>
    public const string CorrectedMethod = "glass-delta-corrected";

    /// <summary>Δ without correction.</summary>
    /// <returns>Undefined with fewer than 2 values in a condition, or a baseline that never varies.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Uncorrected(IndependentContrast contrast, double confidence = 0.95) => Build(UncorrectedMethod, contrast, confidence, corrected: false);

    /// <summary>J(ν) Δ with the exact correction; limits times J.</summary>
    /// <returns>Undefined with fewer than 3 values before or 2 after, or a baseline that never varies.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Corrected(IndependentContrast contrast, double confidence = 0.95) => Build(CorrectedMethod, contrast, confidence, corrected: true);

    private static Estimate Build(string method, IndependentContrast contrast, double confidence, bool corrected)
    {
        Finite.RequireConfidence(confidence);
        if (contrast.Lacks(corrected ? 3 : 2, 2) is { } reason)
            return Estimate.NotDefined(method, reason);
        if (contrast.Before.StandardDeviation is not > 0)
            return Estimate.NotDefined(method, "the values before never vary");
        var (n1, n2, df) = (contrast.Before.Count, contrast.After.Count, contrast.Before.Count - 1);
        var s = contrast.Before.StandardDeviation.Value;
        var delta = contrast.Difference / s;
        if (!double.IsFinite(delta))
            return Estimate.Of(method, delta);
        var j = corrected ? HedgesCorrection.Exact(df) : 1;
        var ratio = contrast.After.StandardDeviation!.Value / s;
        var h = Math.Sqrt((1.0 / n1) + (ratio * ratio / n2));
        var se = j * Math.Sqrt((1.0 / n1) + (1.0 / n2) + (delta * delta / (2 * df)));
        var t = delta / h;
        return Estimate.Of(method, j * delta, se, Limits.Noncentral(t, df, j * h, confidence), StudentT.TwoSided(t, df), df);
    }
}
