using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.EffectSizes;

/// <summary>Probability of superiority under normal distributions, computed from a standardized difference.</summary>
/// <remarks>Source: McGraw and Wong (1992), Psychological Bulletin 111:361–365; Lakens (2013), Frontiers in Psychology 4:863.</remarks>
public static class NormalSuperiority
{
    /// <summary>Method word of <see cref="Independent"/>.</summary>
    public const string IndependentMethod = "probability-of-superiority-normal";

    /// <summary>Method word of <see cref="Paired"/>.</summary>
    public const string PairedMethod = "probability-of-superiority-normal-paired";

    /// <summary>Φ(d/√2), d by the pooled standard deviation; interval from the noncentral limits of d.</summary>
    /// <returns>From 0 to 1. Undefined where d is.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Independent(IndependentContrast contrast, double confidence = 0.95) =>
        Transform(IndependentMethod, HedgesG.Uncorrected(contrast, confidence), Math.Sqrt(2));

    /// <summary>Φ(d_z): the chance that a random pair rises.</summary>
    /// <returns>From 0 to 1. Undefined with fewer than 3 pairs or changes that never vary.</returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Paired(PairedContrast contrast, double confidence = 0.95)
    {
        var g = StandardizedChange.ByDifferences(contrast, confidence);
        return Transform(PairedMethod, g, g.IsDefined ? HedgesCorrection.Exact(contrast.DegreesOfFreedom) : 1);
    }

    private static Estimate Transform(string method, Estimate standardized, double divisor)
    {
        if (standardized.Value is not { } d)
            return Estimate.NotDefined(method, standardized.Undefined!);
        Interval? interval = standardized.Interval is { } i
            ? new Interval(Normal.Cdf(i.Low / divisor), Normal.Cdf(i.High / divisor), i.Level)
            : null;
        return Estimate.Of(method, Normal.Cdf(d / divisor), interval: interval, p: standardized.P);
    }
}
