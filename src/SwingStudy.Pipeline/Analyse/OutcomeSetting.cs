using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Pipeline.Analyse;

/// <summary>What the analysis knows of an outcome: its plan and its definition.</summary>
/// <param name="Name">Name of the variable.</param>
/// <param name="Title">What a person calls it.</param>
/// <param name="Unit">UCUM code of its canonical unit; null without unit.</param>
/// <param name="DisplayUnit">UCUM code of the unit shown to people.</param>
/// <param name="Scale">Scale of measurement.</param>
/// <param name="Better">Which direction is an improvement.</param>
/// <param name="Target">The value to come near to, canonical unit.</param>
/// <param name="Role">What it is for.</param>
/// <param name="Worthwhile">Smallest worthwhile change, canonical unit; null where nobody could say.</param>
/// <param name="Contrasts">Planned contrasts of this outcome; those that were added or changed when data could be seen are not among them.</param>
/// <param name="Late">Contrasts of this outcome that the protocol names in their present form only since data could be seen, with when that was in words.</param>
/// <param name="IsNumeric">Whether its values are numbers.</param>
/// <param name="Kind">What its numbers are.</param>
internal sealed record OutcomeSetting(
    string Name,
    string Title,
    string? Unit,
    string? DisplayUnit,
    MeasurementScale Scale,
    Better Better,
    double? Target,
    string Role,
    double? Worthwhile,
    IReadOnlyList<string> Contrasts,
    IReadOnlyDictionary<string, string> Late,
    bool IsNumeric,
    OutcomeKind Kind)
{
    /// <summary>The outcomes of the protocol, in its order.</summary>
    public static IReadOnlyList<OutcomeSetting> Of(StudySetup setup) =>
    [
        .. setup.Protocol.Outcomes.Select(outcome => (Outcome: outcome, Variable: setup.Dictionary[outcome.Variable])).Select(pair => new OutcomeSetting(
            pair.Variable.Name,
            pair.Variable.Title,
            pair.Variable.Unit,
            pair.Variable.ShownUnit,
            pair.Variable.Scale,
            pair.Variable.Better,
            pair.Variable.Target,
            Word.Of(pair.Outcome.Role),
            pair.Outcome.SmallestWorthwhile?.Amount,
            [.. Named(setup, pair.Outcome).Where(contrast => setup.History.StandingOf(pair.Outcome.Variable, contrast).Time != PlanTime.AfterData)],
            Named(setup, pair.Outcome).Select(contrast => (Name: contrast, Standing: setup.History.StandingOf(pair.Outcome.Variable, contrast)))
                .Where(contrast => contrast.Standing.Time == PlanTime.AfterData).ToDictionary(contrast => contrast.Name, contrast => contrast.Standing.Sentence, StringComparer.Ordinal),
            pair.Variable.Type is VariableType.Number or VariableType.Integer,
            KindOf(pair.Variable))),
    ];

    /// <summary>Columns of <c>swings</c> that hold outcomes with numbers.</summary>
    public static IEnumerable<string> Columns(IEnumerable<OutcomeSetting> outcomes) =>
        outcomes.Where(outcome => outcome.IsNumeric).Select(outcome => outcome.Name).Distinct(StringComparer.Ordinal);

    /// <summary>Seconds in one unit of a time; null for what is no time.</summary>
    public double? Seconds => Unit is { } unit && UnitConversion.Between(UnitCatalogue.ParseCode(unit)!, UnitCatalogue.ParseCode("s")!) is { } conversion ? conversion.Factor : null;

    /// <summary>Whether it tells what in the movement changed.</summary>
    public bool IsMechanism => Role == Word.Of(OutcomeRole.Mechanism);

    /// <summary>Whether the role is that of a primary outcome.</summary>
    public bool IsPrimary => Role == Word.Of(OutcomeRole.Primary);

    private static IEnumerable<string> Named(StudySetup setup, OutcomeMeasure outcome) =>
        outcome.Contrasts.Count > 0 ? outcome.Contrasts : setup.Protocol.Contrasts.Select(contrast => contrast.Name);

    /// <summary>Moments are told from durations by what is possible: only a moment relative to impact can be negative.</summary>
    private static OutcomeKind KindOf(Variable variable)
    {
        var isImpulse = variable.Name.Contains("impulse", StringComparison.Ordinal);
        return variable.Unit switch
        {
            "s" or "ms" when !isImpulse => variable.Name.EndsWith("_before_impact", StringComparison.Ordinal) ? OutcomeKind.MomentBefore
                : variable.Minimum < 0 ? OutcomeKind.Moment : OutcomeKind.Duration,
            "{BW}" or "{BW}/s" or "N" or "N.s" or "N.m" or "s" => OutcomeKind.Force,
            _ => OutcomeKind.Size,
        };
    }
}
