using SwingStudy.Statistics.Results;

namespace SwingStudy.Statistics.Change;

/// <summary>One player's change between two phases, judged against both floors of that player's noise: swing to swing and day to day.</summary>
/// <remarks>Made by <see cref="HonestChangeRule"/>, which documents the formulas. Positive means that values rose.</remarks>
public sealed record HonestChange
{
    /// <summary>Method word.</summary>
    public const string Method = "honest-change";

    /// <summary>Mean of session means after − before, with SE, interval, p and Satterthwaite's degrees of freedom; SE and the rest are null
    /// when <see cref="CannotTell"/> leaves nothing to judge by.</summary>
    public required Estimate Estimate { get; init; }

    /// <summary>Sessions before.</summary>
    public required int SessionsBefore { get; init; }

    /// <summary>Sessions after.</summary>
    public required int SessionsAfter { get; init; }

    /// <summary>Swings before.</summary>
    public required int SwingsBefore { get; init; }

    /// <summary>Swings after.</summary>
    public required int SwingsAfter { get; init; }

    /// <summary>Sessions that hold swings of both phases: within them the change competes with warming up and fatigue.</summary>
    public required int SharedSessions { get; init; }

    /// <summary>Swing-to-swing floor: standard deviation between swings of one session, corrected for serial dependence; null when unknown.</summary>
    public double? SwingStandardDeviation { get; init; }

    /// <summary>Day-to-day floor: standard deviation between sessions, swing noise taken out, 0 when none is seen; null when unknown.</summary>
    public double? SessionStandardDeviation { get; init; }

    /// <summary>The part of SE that swings alone explain, √(Σ σ_e² V/k / m²) over both phases; null when unknown.</summary>
    public double? SwingStandardError { get; init; }

    /// <summary>The part of SE that sessions explain, σ_s √(1/m₁ + 1/m₂); null when unknown.</summary>
    public double? SessionStandardError { get; init; }

    /// <summary>Likeness of neighbouring swings.</summary>
    public required SerialDependence Dependence { get; init; }

    /// <summary>t · SE: a change smaller than this cannot be told from noise; null when SE is.</summary>
    public double? SmallestDetectableChange { get; init; }

    /// <summary>The smallest worthwhile change judged against, 0 or more.</summary>
    public required double SmallestWorthwhileChange { get; init; }

    /// <summary>Probability that the true change lies above +worthwhile (flat prior, t distribution); null when SE is.</summary>
    public double? ProbabilityAboveWorthwhile { get; init; }

    /// <summary>Probability that the true change lies below −worthwhile; null when SE is.</summary>
    public double? ProbabilityBelowWorthwhile { get; init; }

    /// <summary>What most limits the answer; null when a phase has no swing.</summary>
    public ChangeLimit? LimitedBy { get; init; }

    /// <summary>Why no verdict can stand, or <see cref="CannotTell.No"/>.</summary>
    public required CannotTell CannotTell { get; init; }

    /// <summary>Whether the estimate exceeds the smallest detectable change in size; null when that is unknown.</summary>
    public bool? ExceedsNoise => SmallestDetectableChange is { } detectable && Estimate.Value is { } value ? Math.Abs(value) > detectable : null;

    /// <summary>Whether the estimate reaches the smallest worthwhile change in size; null when there is no estimate.</summary>
    public bool? ReachesWorthwhile => Estimate.Value is { } value ? Math.Abs(value) >= SmallestWorthwhileChange : null;

    /// <summary>Whether the design could show the worthwhile change at all: detectable no larger than worthwhile; null when unknown.</summary>
    public bool? CanAnswer => SmallestDetectableChange <= SmallestWorthwhileChange;
}
