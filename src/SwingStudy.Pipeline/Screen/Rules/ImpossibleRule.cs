namespace SwingStudy.Pipeline.Screen.Rules;

/// <summary>A derived value outside the possible range of the dictionary. What a device wrote is rejected at intake already and becomes a flag from there.</summary>
internal sealed class ImpossibleRule : ScreeningCheck
{
    /// <summary>Name of the rule.</summary>
    public const string Word = "impossible";

    public override string Name => Word;

    public override IEnumerable<RuleHit> Find(ScreenedSwings swings, RuleSetting rule) =>
        RangeHits.Outside(swings, swings.Chosen(rule), variable => (variable.Minimum, variable.Maximum), "the possible range");
}
