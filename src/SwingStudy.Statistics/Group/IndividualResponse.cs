using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Group;

/// <summary>How much players truly differ in their response to a cue.</summary>
/// <remarks>
/// SD_IR² = s²(changes with the cue) − s²(changes without); its SE is √(2 (s_i⁴/df_i + s_c⁴/df_c)), interval normal on the variance, then a
/// root that keeps the sign: a negative value says that changes varied less with the cue than without.
/// Source: Hopkins (2015), Journal of Applied Physiology 118:1444–1446.
/// </remarks>
public static class IndividualResponse
{
    /// <summary>Method word.</summary>
    public const string Method = "individual-response-sd";

    /// <summary>Standard deviation of individual responses.</summary>
    /// <param name="controlChanges">Change of each player without the cue.</param>
    /// <param name="cueChanges">Change of each player with the cue.</param>
    /// <param name="confidence">Level of the interval.</param>
    /// <returns>Unit of the values, negative when the control varied more. Undefined with fewer than two changes in a group.</returns>
    /// <exception cref="ArgumentException">A value is not finite or the confidence is out of range.</exception>
    public static Estimate Of(ReadOnlySpan<double> controlChanges, ReadOnlySpan<double> cueChanges, double confidence = 0.95)
    {
        Finite.RequireConfidence(confidence);
        var (control, cue) = (Summary.Of(controlChanges), Summary.Of(cueChanges));
        if (control.Variance is not { } c || cue.Variance is not { } i)
            return Estimate.NotDefined(Method, $"needs at least 2 changes in each group, got {control.Count} and {cue.Count}");
        var se = Math.Sqrt(2 * ((i * i / (cue.Count - 1)) + (c * c / (control.Count - 1))));
        var variance = Limits.Normal(i - c, se, confidence);
        return Estimate.Of(Method, Root(i - c), interval: new Interval(Root(variance.Low), Root(variance.High), confidence));
    }

    private static double Root(double variance) => Math.Sign(variance) * Math.Sqrt(Math.Abs(variance));
}
