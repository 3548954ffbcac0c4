using SwingStudy.Motion.Tests.Reference;

namespace SwingStudy.Tests.Reference;

/// <summary>All kinds of reference cases this project can compute.</summary>
public static class CaseKinds
{
    /// <summary>Topic 7 (signals); its curve tests belong to the statistics tests.</summary>
    public static bool Covers(ReferenceCase item) => item.Topic.StartsWith('7') && !item.Id.StartsWith("wave-", StringComparison.Ordinal);

    public static IReadOnlyList<CaseKind> All { get; } = [.. FilterCases.Kinds, .. CurveShapeCases.Kinds];
}
