namespace SwingStudy.Pipeline.Screen.Rules;

/// <summary>A value outside the typical range of the dictionary: no fault by itself.</summary>
internal sealed class OutsideTypicalRule : ScreeningCheck
{
    /// <summary>Name of the rule.</summary>
    public const string Word = "outside-typical";

    public override string Name => Word;

    public override IEnumerable<RuleHit> Find(ScreenedSwings swings, RuleSetting rule) =>
        RangeHits.Outside(swings, swings.Chosen(rule), variable => (variable.TypicalLow, variable.TypicalHigh), "the typical range");
}
