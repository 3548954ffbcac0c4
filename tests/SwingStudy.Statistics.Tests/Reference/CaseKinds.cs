using SwingStudy.Statistics.Tests.Reference;

namespace SwingStudy.Tests.Reference;

/// <summary>All kinds of reference cases this project can compute; each topic declares its own.</summary>
public static class CaseKinds
{
    /// <summary>Topic 7 (signals) belongs to the motion tests, save for its curve tests.</summary>
    public static bool Covers(ReferenceCase item) => !item.Topic.StartsWith('7') || item.Id.StartsWith("wave-", StringComparison.Ordinal);

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
