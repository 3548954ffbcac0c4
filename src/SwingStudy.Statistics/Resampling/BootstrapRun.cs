namespace SwingStudy.Statistics.Resampling;

/// <summary>What a bootstrap gave.</summary>
/// <param name="Distribution">The observed statistic and its replicates.</param>
/// <param name="LeftOut">Resamples that did not support the statistic, for instance because all values drawn were equal.</param>
/// <param name="Jackknife">The statistic with each row or cluster left out in turn; null where that does not support it.</param>
public sealed record BootstrapRun(BootstrapDistribution Distribution, int LeftOut, Jackknife? Jackknife);
