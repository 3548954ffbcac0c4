namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>The verdict on one player's change.</summary>
/// <remarks>
/// <list type="bullet">
/// <item><c>cannot tell</c>: a phase has no swing that counts, or one session while nobody knows how much sessions differ, or both phases were struck on
/// one day;</item>
/// <item><c>supported</c>: planned; the interval excludes zero (the change exceeds the smallest detectable one), and still does so after adjustment for the
/// planned comparisons of the same role; the change is worthwhile with at least the protocol's confidence where a worthwhile size is stated; and no caveat
/// offers another explanation: among them a steady trend from session to session that cannot be told from the change, and a test of the draw that could have
/// given a small p and gave one far from it;</item>
/// <item><c>suggestive</c>: the interval excludes zero, but one of the others fails; or it does not, but the true change has the sign of the
/// estimate with a probability of at least <see cref="LikelySign"/> (p below 0.2) and the estimate is worthwhile where a size is stated;</item>
/// <item><c>not shown</c>: otherwise. It does not say that nothing changed.</item>
/// </list>
/// How often it errs is simulated with the stages themselves in <c>scripts/false-claims</c>.
/// </remarks>
internal static class Judgement
{
    /// <summary>Probability of the sign from which a change that noise could explain is called suggestive.</summary>
    public const double LikelySign = 0.9;

    /// <summary>The verdict.</summary>
    public static Verdict Of(PlayerChange player, double confidence)
    {
        if (player.CannotTell is not null || player.Estimate is not { } estimate || player.Change.Estimate.Interval is null)
            return Verdict.CannotTell;
        if (player.ExceedsNoise)
            return IsSupported(player, confidence) ? Verdict.Supported : Verdict.Suggestive;
        return player.Change.Estimate.P <= 2 * (1 - LikelySign) && Math.Abs(estimate) >= (player.Outcome.Worthwhile ?? 0) ? Verdict.Suggestive : Verdict.NotShown;
    }

    private static bool IsSupported(PlayerChange player, double confidence) =>
        player.Basis == Basis.Planned
        && SurvivesAdjustment(player, confidence)
        && (player.Outcome.Worthwhile is null || player.ProbabilityWorthwhile >= confidence)
        && !player.Caveats.Any(caveat => caveat.ForbidsSupport);

    /// <summary>Whether the change exceeds noise after adjustment. Without any scatter there is no p to adjust, and nothing to doubt.</summary>
    public static bool SurvivesAdjustment(PlayerChange player, double confidence) => player.AdjustedP is not { } p || p <= 1 - confidence;
}
