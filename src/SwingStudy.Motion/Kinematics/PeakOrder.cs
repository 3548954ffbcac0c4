namespace SwingStudy.Motion.Kinematics;

/// <summary>The order in which segments reach their greatest speed.</summary>
public static class PeakOrder
{
    /// <summary>Two peaks are within one sample of each other: no order.</summary>
    public const string Unresolved = "unresolved";

    /// <summary>Letters of the segments in order of their peaks, or <see cref="Unresolved"/>; null when a time is missing.</summary>
    /// <param name="peaks">Letter and time of each segment.</param>
    /// <param name="resolutionS">Times closer than this are not told apart: the interval of two samples.</param>
    public static string? Of(IReadOnlyList<(char Letter, double TimeS)> peaks, double resolutionS)
    {
        if (peaks.Any(peak => double.IsNaN(peak.TimeS)))
            return null;
        var ordered = peaks.OrderBy(peak => peak.TimeS).ToList();
        for (var i = 1; i < ordered.Count; i++)
        {
            // A difference of exactly one sample may miss it by rounding.
            if (ordered[i].TimeS - ordered[i - 1].TimeS <= resolutionS * (1 + 1e-9))
                return Unresolved;
        }

        return string.Concat(ordered.Select(peak => peak.Letter));
    }
}
