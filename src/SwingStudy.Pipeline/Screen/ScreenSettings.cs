using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Variables;
using SwingStudy.Pipeline.Screen.Rules;

namespace SwingStudy.Pipeline.Screen;

/// <summary>What screening may know of the declarations.</summary>
/// <param name="Rules">Rules of the protocol in its order; impossible and untypical values are flagged even where it says nothing of them.</param>
/// <param name="Variables">Numeric variables of swings.</param>
/// <param name="Outcomes">Outcomes of the protocol: a missing one is flagged by itself.</param>
internal sealed record ScreenSettings(IReadOnlyList<RuleSetting> Rules, IReadOnlyList<ScreenedVariable> Variables, IReadOnlyList<string> Outcomes)
{
    public static ScreenSettings Of(StudySetup setup)
    {
        var rules = setup.Protocol.Screening.Select(RuleSetting.Of).ToList();
        if (rules.All(rule => rule.Rule != ImpossibleRule.Word))
            rules.Insert(0, RuleSetting.Of(Silent(ImpossibleRule.Word, ScreeningAction.ExcludeValue)));
        if (rules.All(rule => rule.Rule != OutsideTypicalRule.Word))
            rules.Add(RuleSetting.Of(Silent(OutsideTypicalRule.Word, ScreeningAction.Keep)));
        foreach (var word in AlwaysLooked.Where(word => rules.All(rule => rule.Rule != word)))
            rules.Add(RuleSetting.Of(Silent(word, ScreeningAction.Keep)));
        return new ScreenSettings(rules, [.. setup.Dictionary.Variables
            .Where(variable => variable is { Type: VariableType.Number, Level: VariableLevel.Swing }).Select(ScreenedVariable.Of)],
            [.. setup.Protocol.Outcomes.Select(outcome => outcome.Variable)]);
    }

    /// <summary>Checks between devices: they only ask a person to look, so they run even where the protocol says nothing of them.</summary>
    private static readonly string[] AlwaysLooked = ["device-disagreement", "weight-drift", "plates-swapped"];

    private static ScreeningRule Silent(string rule, ScreeningAction action) => new(rule, [], action, new Dictionary<string, double>(), "");
}
