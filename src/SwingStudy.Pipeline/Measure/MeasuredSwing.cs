namespace SwingStudy.Pipeline.Measure;

/// <summary>A swing and the captures that tell of it.</summary>
/// <param name="Id">The swing.</param>
/// <param name="StruckMillis">Moment of impact.</param>
/// <param name="Skeleton">Row of the capture from the source that gives the session its swings; null when that source missed it.</param>
/// <param name="Single">Rows that each describe the whole swing, the preferred source first.</param>
/// <param name="Moments">Rows of moments around it, the preferred source first.</param>
internal sealed record MeasuredSwing(string Id, long StruckMillis, int? Skeleton, IReadOnlyList<int> Single, IReadOnlyList<int> Moments);
