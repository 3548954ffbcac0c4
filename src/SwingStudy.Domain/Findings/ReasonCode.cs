namespace SwingStudy.Domain.Findings;

/// <summary>The words that reasons begin with. Analysts filter by them: they are never reused for something else.</summary>
public static class ReasonCode
{
    /// <summary>The analysis is not named in the protocol.</summary>
    public const string Exploratory = "exploratory";

    /// <summary>The analysis was added to the protocol after it was locked.</summary>
    public const string Amended = "amended";

    /// <summary>Nobody can show that the analysis was planned before data.</summary>
    public const string NotLocked = "not-locked";

    /// <summary>The interval includes no change.</summary>
    public const string WithinNoise = "within-noise";

    /// <summary>Beyond noise, but several planned comparisons were made.</summary>
    public const string SeveralComparisons = "several-comparisons";

    /// <summary>Beyond noise, but perhaps smaller than worthwhile.</summary>
    public const string WorthwhileUnsure = "worthwhile-unsure";

    /// <summary>Nobody said what would be worthwhile.</summary>
    public const string WorthwhileUnstated = "worthwhile-unstated";

    /// <summary>Even a worthwhile change could not be told from noise.</summary>
    public const string DesignTooCoarse = "design-too-coarse";

    /// <summary>All swings of both phases were struck on one day.</summary>
    public const string OneDay = "one-day";

    /// <summary>p of the randomization test.</summary>
    public const string Randomization = "randomization-test";

    /// <summary>How far session means of the phases overlap.</summary>
    public const string NonOverlap = "non-overlap";

    /// <summary>Which share of the change is still there.</summary>
    public const string ShareKept = "share-kept";

    /// <summary>Which share of the change carries over.</summary>
    public const string ShareCarriedOver = "share-carried-over";

    /// <summary>A moment of the movement came at another time.</summary>
    public const string MovedInTime = "moved-in-time";

    /// <summary>A size of the movement changed.</summary>
    public const string MovedInSize = "moved-in-size";

    /// <summary>No mechanism outcome moved.</summary>
    public const string NothingMoved = "nothing-moved";

    /// <summary>Design standards.</summary>
    public const string DesignStandard = "design-standard";

    /// <summary>What would settle it.</summary>
    public const string ToSettle = "to-settle";

    private static readonly HashSet<string> Evidence =
    [
        Exploratory, Amended, NotLocked, WithinNoise, SeveralComparisons, WorthwhileUnsure, WorthwhileUnstated, DesignTooCoarse, OneDay, Randomization, NonOverlap, ShareKept, ShareCarriedOver,
        "phase-without-swings", "one-session-without-session-variance", "swing-variance-unknown",
    ];

    /// <summary>The kind of reason that a word begins; a rival explanation when the word is none of the others.</summary>
    public static ReasonKind KindOf(string code) => code switch
    {
        "" => ReasonKind.Evidence,
        MovedInTime or MovedInSize or NothingMoved => ReasonKind.Mechanism,
        DesignStandard => ReasonKind.Standard,
        ToSettle => ReasonKind.NextStep,
        _ => Evidence.Contains(code) ? ReasonKind.Evidence : ReasonKind.Rival,
    };
}
