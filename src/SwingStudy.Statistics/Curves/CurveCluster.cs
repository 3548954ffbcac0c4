namespace SwingStudy.Statistics.Curves;

/// <summary>A run of neighbouring nodes whose t lies beyond the threshold on one side.</summary>
/// <param name="From">First node, 0-based.</param>
/// <param name="To">Last node, 0-based, included.</param>
/// <param name="PeakT">The t of largest size in the run, with its sign; infinite where the curves separate without any scatter.</param>
/// <param name="P">Share of relabellings whose largest |t| anywhere is at least |<paramref name="PeakT"/>|.</param>
public readonly record struct CurveCluster(int From, int To, double PeakT, double P);
