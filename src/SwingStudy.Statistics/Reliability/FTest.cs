using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Reliability;

/// <summary>A ratio of two mean squares and its test.</summary>
/// <param name="F">The ratio; null when the denominator is zero.</param>
/// <param name="NumeratorDegreesOfFreedom">Of the numerator.</param>
/// <param name="DenominatorDegreesOfFreedom">Of the denominator.</param>
/// <param name="P">P(F or larger); null without F.</param>
public sealed record FTest(double? F, double NumeratorDegreesOfFreedom, double DenominatorDegreesOfFreedom, double? P)
{
    internal static FTest Of(double numerator, double denominator, double df1, double df2)
    {
        double? f = denominator > 0 && double.IsFinite(numerator / denominator) ? numerator / denominator : null;
        return new FTest(f, df1, df2, f is { } ratio ? FisherF.UpperTail(ratio, df1, df2) : null);
    }
}
