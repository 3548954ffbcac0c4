namespace SwingStudy.Statistics.Tests.Reference;

/// <summary>All kinds of reference cases this project can compute; each topic declares its own.</summary>
public static class CaseKinds
{
    public static IReadOnlyList<CaseKind> All { get; } =
    [
        .. DescriptionCases.Kinds,
        .. DistributionCases.Kinds,
        .. EffectSizeCases.Kinds,
        .. SingleCaseCases.Kinds,
        .. BetweenCaseCases.Kinds,
        .. ResamplingCases.Kinds,
        .. ReliabilityCases.Kinds,
        .. CurveCases.Kinds,
        .. PlanningCases.Kinds,
        .. MixedModelCases.Kinds,
        .. GroupCases.Kinds,
    ];
}
