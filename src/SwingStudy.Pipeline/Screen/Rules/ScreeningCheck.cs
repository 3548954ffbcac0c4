namespace SwingStudy.Pipeline.Screen.Rules;

/// <summary>One kind of screening rule. It sees swings without phase and says what it finds; what follows is the protocol's to say.</summary>
internal abstract class ScreeningCheck
{
    /// <summary>The word in protocols and in the <c>rule</c> column.</summary>
    public abstract string Name { get; }

    /// <summary>What it finds, in any order.</summary>
    public abstract IEnumerable<RuleHit> Find(ScreenedSwings swings, RuleSetting rule);

    /// <summary>All kinds.</summary>
    public static IReadOnlyList<ScreeningCheck> All { get; } =
        [new ImpossibleRule(), new OutsideTypicalRule(), new RobustOutlierRule(), new RatioLimitRule(), new RepeatedValueRule(), new UnitJumpRule(),
        new DeviceDisagreementRule(), new WeightDriftRule(), new PlatesSwappedRule()];
}
