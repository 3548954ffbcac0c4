using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.EffectSizes;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>Ratios of the means of session means: one session is one point.</summary>
/// <remarks>Standard error by the delta method over session means, limits by t with m₁ + m₂ − 2 degrees of freedom because sessions are few; without
/// a second session in both phases there is an estimate and no error.</remarks>
internal static class SessionRatio
{
    /// <summary>What follows the name of the estimator in <c>method</c>.</summary>
    public const string Basis = "; session means";

    /// <summary>ln(mean after/mean before).</summary>
    public static Estimate Logarithm(ChangeData data, double confidence)
    {
        var contrast = IndependentContrast.Of(Means(data.Before), Means(data.After));
        var ratio = LogResponseRatio.Independent(contrast, confidence);
        var method = ratio.Method + Basis;
        if (ratio.Value is not { } value)
            return Estimate.NotDefined(method, ratio.Undefined!);
        var df = contrast.PooledDegreesOfFreedom;
        if (ratio.StandardError is not { } se || df < 1)
            return Estimate.Of(method, value);
        var half = StudentT.Critical(confidence, df) * se;
        return Estimate.Of(method, value, se, new Interval(value - half, value + half, confidence), se > 0 ? StudentT.TwoSided(value / se, df) : null, df);
    }

    /// <summary>100 (mean after/mean before − 1); limits and p are those of the logarithm.</summary>
    public static Estimate Percent(ChangeData data, double confidence)
    {
        var logarithm = Logarithm(data, confidence);
        var method = PercentChange.IndependentMethod + Basis;
        if (logarithm.Value is not { } value)
            return Estimate.NotDefined(method, logarithm.Undefined!);
        Interval? interval = logarithm.Interval is { } i ? new Interval(Percent(i.Low), Percent(i.High), i.Level) : null;
        return Estimate.Of(method, Percent(value), 100 * Math.Exp(value) * logarithm.StandardError, interval, logarithm.P, logarithm.DegreesOfFreedom);

        static double Percent(double x) => 100 * (Math.Exp(x) - 1);
    }

    private static double[] Means(IReadOnlyList<double[]> sessions) => [.. sessions.Select(session => Summary.Of(session).Mean!.Value)];
}
