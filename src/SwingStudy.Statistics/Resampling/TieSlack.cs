namespace SwingStudy.Statistics.Resampling;

/// <summary>The margin within which two values of a statistic count as equal, so that rounding cannot break ties.</summary>
internal static class TieSlack
{
    /// <summary>1e-9 of the observed statistic, and at least 1e-13 of the spread of what it was computed from.</summary>
    public static double Of(double observed, double spread) => (1e-9 * Math.Abs(observed)) + (1e-13 * spread);
}
