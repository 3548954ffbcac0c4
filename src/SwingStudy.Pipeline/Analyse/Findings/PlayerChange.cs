using SwingStudy.Domain.Findings;
using SwingStudy.Statistics.Change;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>The facts on which a player's finding rests.</summary>
/// <param name="Compared">The player in the comparison.</param>
/// <param name="Basis">How the comparison stands to the plan.</param>
/// <param name="MeanBefore">Mean of session means before; null without sessions.</param>
/// <param name="Caveats">What could explain it otherwise or limits it.</param>
internal sealed record PlayerChange(ComparedPlayer Compared, Basis Basis, double? MeanBefore, IReadOnlyList<Caveat> Caveats)
{
    /// <summary>p adjusted over the player's planned comparisons of outcomes of the same role; the plain p where the comparison is not planned; null without one.</summary>
    public double? AdjustedP { get; init; }

    /// <summary>Planned comparisons over which p was adjusted.</summary>
    public int FamilySize { get; init; } = 1;

    /// <summary>The player.</summary>
    public string Participant => Compared.Player.Participant;

    /// <summary>The outcome.</summary>
    public OutcomeSetting Outcome => Compared.Outcome;

    /// <summary>The contrast.</summary>
    public ContrastSetting Contrast => Compared.Contrast;

    /// <summary>The change against the player's noise.</summary>
    public HonestChange Change => Compared.Change;

    /// <summary>Estimate, canonical unit; null without one.</summary>
    public double? Estimate => Change.Estimate.Value;

    /// <summary>Why no verdict can stand; null when one can.</summary>
    public Reason? CannotTell { get; init; }

    /// <summary>Probability that the true change is worthwhile in the direction of the estimate; null when unknown.</summary>
    public double? ProbabilityWorthwhile => Estimate >= 0 ? Change.ProbabilityAboveWorthwhile : Change.ProbabilityBelowWorthwhile;

    /// <summary>Whether either phase has a value of the outcome: without any the player had no device for it, and counts neither for nor against.</summary>
    public bool IsMeasured => Change.SwingsBefore + Change.SwingsAfter > 0;

    /// <summary>Whether the interval excludes no change.</summary>
    public bool ExceedsNoise => Change.Estimate.Interval is { } interval && !interval.Contains(0);

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
