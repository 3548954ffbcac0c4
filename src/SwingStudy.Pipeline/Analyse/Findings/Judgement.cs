using SwingStudy.Statistics.Change;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>The verdict on one player's change.</summary>
/// <remarks>
/// <list type="bullet">
/// <item><c>cannot tell</c>: a phase has no swing that counts, or one session while nobody knows how much sessions differ;</item>
/// <item><c>supported</c>: the interval excludes zero (the change exceeds the smallest detectable one), the change is worthwhile with at least the
/// protocol's confidence where a worthwhile size is stated, and no caveat offers another explanation;</item>
/// <item><c>suggestive</c>: the interval excludes zero, but one of the others fails; or it does not, but the true change has the sign of the
/// estimate with a probability of at least <see cref="LikelySign"/> (p below 0.2) and the estimate is worthwhile where a size is stated;</item>
/// <item><c>not shown</c>: otherwise. It does not say that nothing changed.</item>
/// </list>
/// </remarks>
internal static class Judgement
{
    /// <summary>Probability of the sign from which a change that noise could explain is called suggestive.</summary>
    public const double LikelySign = 0.9;

    /// <summary>The verdict.</summary>
    public static Verdict Of(PlayerChange player, double confidence)
    {
        var change = player.Change;
        if (change.CannotTell != CannotTell.No || player.Estimate is not { } estimate || change.Estimate.Interval is not { } interval)
            return Verdict.CannotTell;
        var worthwhile = player.Outcome.Worthwhile;
        if (!interval.Contains(0))
        {
            var isWorthwhile = worthwhile is null || player.ProbabilityWorthwhile >= confidence;
            return isWorthwhile && !player.Caveats.Any(caveat => caveat.ForbidsSupport) ? Verdict.Supported : Verdict.Suggestive;
        }

        return change.Estimate.P <= 2 * (1 - LikelySign) && Math.Abs(estimate) >= (worthwhile ?? 0) ? Verdict.Suggestive : Verdict.NotShown;
    }
}
