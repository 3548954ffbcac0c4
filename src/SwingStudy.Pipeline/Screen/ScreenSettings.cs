using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Variables;
using SwingStudy.Pipeline.Screen.Rules;

namespace SwingStudy.Pipeline.Screen;

/// <summary>What screening may know of the declarations.</summary>
/// <param name="Rules">Rules of the protocol in its order; impossible and untypical values are flagged even where it says nothing of them.</param>
/// <param name="Variables">Numeric variables of swings.</param>
internal sealed record ScreenSettings(IReadOnlyList<RuleSetting> Rules, IReadOnlyList<ScreenedVariable> Variables)
{
    public static ScreenSettings Of(StudySetup setup)
    {
        var rules = setup.Protocol.Screening.Select(RuleSetting.Of).ToList();
        if (rules.All(rule => rule.Rule != ImpossibleRule.Word))
            rules.Insert(0, RuleSetting.Of(Silent(ImpossibleRule.Word, ScreeningAction.ExcludeValue)));
        if (rules.All(rule => rule.Rule != OutsideTypicalRule.Word))
            rules.Add(RuleSetting.Of(Silent(OutsideTypicalRule.Word, ScreeningAction.Keep)));
        return new ScreenSettings(rules, [.. setup.Dictionary.Variables
            .Where(variable => variable is { Type: VariableType.Number, Level: VariableLevel.Swing }).Select(ScreenedVariable.Of)]);
    }

    private static ScreeningRule Silent(string rule, ScreeningAction action) => new(rule, [], action, new Dictionary<string, double>(), "");
}
