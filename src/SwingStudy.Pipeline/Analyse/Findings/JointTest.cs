using SwingStudy.Pipeline.Analyse.Findings.Rivals;
using SwingStudy.Pipeline.Analyse.Group;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>The test of players that were drawn together.</summary>
/// <param name="SmallestP">The smallest p that it could have given; null where it cannot be made.</param>
/// <param name="Effect">Its row of <c>group_effects</c>.</param>
internal sealed record JointTest(double? SmallestP, GroupEffect Effect)
{
    /// <summary>Whether it could have been significant and is far from it.</summary>
    public bool IsUnconvinced(double confidence) => SmallestP is { } smallest && Effect.Estimate.P is { } p && UnconvincedDraw.IsFar(p, smallest, confidence);
}
