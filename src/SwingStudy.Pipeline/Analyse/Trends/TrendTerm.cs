using SwingStudy.Statistics.Results;

namespace SwingStudy.Pipeline.Analyse.Trends;

/// <summary>One term of a player's series.</summary>
/// <param name="Term">The word in the <c>term</c> column.</param>
/// <param name="Unit">UCUM unit of the estimate; slopes are for each session or swing, as the term says.</param>
/// <param name="Estimate">The estimate.</param>
internal sealed record TrendTerm(string Term, string? Unit, Estimate Estimate)
{
    /// <summary>Slope of the session means before the change, a session, by the noise that the change is judged by.</summary>
    public const string BaselineTrend = "baseline-trend";

    /// <summary>The same as median of pairwise slopes, which a single session cannot bend, with the exact test of Mann and Kendall.</summary>
    public const string BaselineTrendMedian = "baseline-trend-median";

    /// <summary>Common slope of the session means within all phases from the first to the last compared session, a session.</summary>
    public const string WithinPhases = "slope-within-phases";

    /// <summary>What is left of the change when that slope goes on from phase to phase.</summary>
    public const string ChangeBeyondTrend = "change-beyond-trend";

    /// <summary>Jump at the first session after the change against the line before it.</summary>
    public const string LevelChange = "level-change";

    /// <summary>Slope after minus slope before, a session.</summary>
    public const string SlopeChange = "slope-change";

    /// <summary>Likeness of a session to the one before it.</summary>
    public const string Lag1 = "lag-1-of-sessions";

    /// <summary>Share of pairs of sessions in which the later one is better.</summary>
    public const string NonOverlap = "non-overlap";

    /// <summary>Better pairs minus worse ones, baseline trend taken off.</summary>
    public const string TauU = "tau-u";

    /// <summary>Rank correlation with the phase, baseline line taken off where it is significant.</summary>
    public const string BaselineCorrectedTau = "baseline-corrected-tau";

    /// <summary>Mean with minus without the intervention among all assignments that could have been drawn.</summary>
    public const string RandomizationTest = "randomization-test";

    /// <summary>The smallest p that this test could have given.</summary>
    public const string SmallestP = "randomization-smallest-p";

    /// <summary>Slope against the order of swings within sessions, a swing.</summary>
    public const string OrderInSession = "order-in-session";
}
