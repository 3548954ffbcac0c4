using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Change;

/// <summary>How much of a change is still there later, or carries over to other conditions: (later − before)/(with cue − before).</summary>
/// <remarks>
/// Both differences share the mean before, so that they are correlated: C = (SE₁² + SE₂² − SE₁₂²)/2, SE₁₂ of later − with cue. Fieller's interval is
/// the set of shares r with (n − r d)² ≤ t² (SE₂² − 2 r C + r² SE₁²); it is an interval only when d differs from zero, |d| &gt; t SE₁: a share of a
/// change that may be none has no meaning. Source: Fieller (1954), Journal of the Royal Statistical Society B 16:175–185.
/// </remarks>
public static class ShareKept
{
    /// <summary>Method word.</summary>
    public const string Method = "share-kept-fieller";

    /// <summary>The share from three differences with their standard errors.</summary>
    /// <param name="change">With cue − before.</param>
    /// <param name="later">Later − before.</param>
    /// <param name="between">Later − with cue; only its standard error counts.</param>
    /// <param name="confidence">Level of the interval.</param>
    /// <returns>
    /// A share, 1 = all of it. Without interval when a standard error is missing or the change may be none; undefined when it is none.
    /// </returns>
    /// <exception cref="ArgumentException">The confidence is out of range.</exception>
    public static Estimate Of(Estimate change, Estimate later, Estimate between, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        if (change.Value is not { } d || later.Value is not { } n)
            return Estimate.NotDefined(Method, "needs swings in all three phases");
        if (d == 0)
            return Estimate.NotDefined(Method, "the change whose share is asked for is zero");
        if (change.StandardError is not { } se1 || later.StandardError is not { } se2 || between.StandardError is not { } se12
            || change.DegreesOfFreedom is not { } df1 || later.DegreesOfFreedom is not { } df2)
        {
            return Estimate.Of(Method, n / d);
        }

        var df = Math.Min(df1, df2);
        var t = StudentT.Critical(confidence, df);
        var covariance = Math.Clamp(((se1 * se1) + (se2 * se2) - (se12 * se12)) / 2, -se1 * se2, se1 * se2);
        var a = (d * d) - (t * t * se1 * se1);
        if (!(a > 0))
            return Estimate.Of(Method, n / d, degreesOfFreedom: df);
        var b = (n * d) - (t * t * covariance);
        var root = Math.Sqrt(Math.Max(0, (b * b) - (a * ((n * n) - (t * t * se2 * se2)))));
        return Estimate.Of(Method, n / d, interval: new Interval((b - root) / a, (b + root) / a, confidence), degreesOfFreedom: df);
    }
}
