using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.EffectSizes;

/// <summary>Two independent samples reduced to what every effect size of their means needs. Positive means that values rose.</summary>
/// <remarks>Values count as independent of each other: sessions are not modelled here; see the honest change for that.</remarks>
/// <param name="Before">The first condition (baseline, control).</param>
/// <param name="After">The second condition.</param>
public sealed record IndependentContrast(Summary Before, Summary After)
{
    /// <summary>Reduces two samples, all values finite.</summary>
    /// <exception cref="ArgumentException">A value is not finite.</exception>
    public static IndependentContrast Of(ReadOnlySpan<double> before, ReadOnlySpan<double> after) => new(Summary.Of(before), Summary.Of(after));

    /// <summary>mean(after) − mean(before), in the unit.</summary>
    public double Difference => After.MeanMinus(Before);

    /// <summary>n₁ + n₂ − 2.</summary>
    public int PooledDegreesOfFreedom => Before.Count + After.Count - 2;

    /// <summary>√((SS₁ + SS₂)/(n₁ + n₂ − 2)); null without degrees of freedom.</summary>
    public double? PooledStandardDeviation =>
        PooledDegreesOfFreedom > 0 ? Math.Sqrt((Before.SumOfSquares + After.SumOfSquares) / PooledDegreesOfFreedom) : null;

    /// <summary>1/n₁ + 1/n₂.</summary>
    public double InverseCounts => (1.0 / Before.Count) + (1.0 / After.Count);

    /// <summary>Difference over its pooled standard error; null when nothing varies.</summary>
    public double? PooledT => PooledStandardDeviation is > 0 and var s ? Difference / (s * Math.Sqrt(InverseCounts)) : null;

    /// <summary>Two-sided p of <see cref="PooledT"/>.</summary>
    public double? PooledP => PooledT is { } t ? StudentT.TwoSided(t, PooledDegreesOfFreedom) : null;

    /// <summary>Why the means cannot be compared, or null when they can.</summary>
    internal string? Lacks(int beforeAtLeast, int afterAtLeast) =>
        Before.Count < beforeAtLeast || After.Count < afterAtLeast
            ? $"needs at least {beforeAtLeast} values before and {afterAtLeast} after, got {Before.Count} and {After.Count}"
            : null;
}
