namespace SwingStudy.Statistics.Curves;

/// <summary>A run of neighbouring nodes whose t lies beyond a fixed mark on one side, judged by its mass.</summary>
/// <param name="From">First node, 0-based.</param>
/// <param name="To">Last node, 0-based, included.</param>
/// <param name="Mass">Sum of t over the run, with its sign; infinite where the curves separate without any scatter.</param>
/// <param name="P">Share of relabellings whose heaviest run anywhere is at least as heavy.</param>
public readonly record struct MassCluster(int From, int To, double Mass, double P);
