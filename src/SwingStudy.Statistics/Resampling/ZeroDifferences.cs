namespace SwingStudy.Statistics.Resampling;

/// <summary>What a signed-rank test does with differences of zero.</summary>
public enum ZeroDifferences
{
    /// <summary>Drops them before ranking (Wilcoxon 1945).</summary>
    DroppedBeforeRanking,

    /// <summary>Ranks them with the others and drops their ranks (Pratt 1959).</summary>
    RankedThenDropped,
}
