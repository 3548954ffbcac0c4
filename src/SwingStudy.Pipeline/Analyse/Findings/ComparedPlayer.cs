using SwingStudy.Statistics.Change;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>One player in one comparison: what rival explanations are looked for in.</summary>
/// <param name="Player">The player's rows.</param>
/// <param name="Outcome">The outcome.</param>
/// <param name="Contrast">The contrast.</param>
/// <param name="Values">Counted values of the outcome, all phases, in order of time.</param>
/// <param name="Change">The change against the player's noise.</param>
/// <param name="Trends">Terms of the player's series.</param>
/// <param name="Settings">Settings.</param>
internal sealed record ComparedPlayer(
    PlayerRows Player,
    OutcomeSetting Outcome,
    ContrastSetting Contrast,
    IReadOnlyList<CountedValue> Values,
    HonestChange Change,
    EstimateLookup Trends,
    FindingSettings Settings)
{
    /// <summary>Phase before.</summary>
    public PhaseSetting From => Settings.Phase(Contrast.From);

    /// <summary>Phase after.</summary>
    public PhaseSetting To => Settings.Phase(Contrast.To);

    /// <summary>Both phases, the earlier first.</summary>
    public IEnumerable<PhaseSetting> Both => [From, To];

    /// <summary>The change, canonical unit; null without one.</summary>
    public double? Estimate => Change.Estimate.Value;

    /// <summary>Counted values of a phase.</summary>
    public IEnumerable<CountedValue> In(PhaseSetting phase) => Values.Where(value => value.Phase == phase.Name);

    /// <summary>Differences in words, with decimals for the uncertainty of the change.</summary>
    public Quantity Quantity => Quantity.For(Outcome, Change.Estimate.Interval is { HalfWidth: > 0 } interval ? interval.HalfWidth : Estimate ?? 0);

    /// <summary>A term of the player's series in this comparison.</summary>
    public FoundEstimate? Term(string term) => Trends.Find(Player.Participant, Outcome.Name, Contrast.Name, term);
}
