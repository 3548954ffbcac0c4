using SwingStudy.Statistics.Change;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>The facts on which a player's finding rests.</summary>
/// <param name="Participant">The player.</param>
/// <param name="Outcome">The outcome.</param>
/// <param name="Contrast">The contrast.</param>
/// <param name="Change">The change against the player's noise.</param>
/// <param name="MeanBefore">Mean of session means before; null without sessions.</param>
/// <param name="Caveats">What could explain it otherwise or limits it.</param>
internal sealed record PlayerChange(
    string Participant, OutcomeSetting Outcome, ContrastSetting Contrast, HonestChange Change, double? MeanBefore, IReadOnlyList<Caveat> Caveats)
{
    /// <summary>Estimate, canonical unit; null without one.</summary>
    public double? Estimate => Change.Estimate.Value;

    /// <summary>Probability that the true change is worthwhile in the direction of the estimate; null when unknown.</summary>
    public double? ProbabilityWorthwhile => Estimate >= 0 ? Change.ProbabilityAboveWorthwhile : Change.ProbabilityBelowWorthwhile;

    /// <summary>Whether the change is an improvement; null where no direction is better or nothing changed.</summary>
    public bool? IsImprovement => (Outcome.Better, Estimate) switch
    {
        (_, null or 0) => null,
        (Domain.Variables.Better.Higher, { } change) => change > 0,
        (Domain.Variables.Better.Lower, { } change) => change < 0,
        (Domain.Variables.Better.NearerTarget, { } change) when Outcome.Target is { } target && MeanBefore is { } before =>
            Math.Abs(before + change - target) < Math.Abs(before - target),
        _ => null,
    };
}
