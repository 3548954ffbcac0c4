namespace SwingStudy.Pipeline.Link.Clocks;

/// <summary>What is plausible of two clocks, and how sure a match must be.</summary>
internal sealed record ClockLimits
{
    /// <summary>Largest drift of one clock against another; quartz clocks rarely exceed 200 parts in a million (common practice, no source).</summary>
    public double MostDrift { get; init; } = 500e-6;

    /// <summary>The drift is fitted only where its standard error is below this; else it is taken as zero.</summary>
    public double LargestDriftError { get; init; } = 50e-6;

    /// <summary>Drift as it was seen elsewhere; null when nothing is known of it.</summary>
    public ClockDrift? Expected { get; init; }

    /// <summary>How far ordinary triggers waver. A device found to waver more is given four times its own spread.</summary>
    public double JitterSeconds { get; init; } = 0.05;

    /// <summary>How late, or early, an odd trigger may be and still be joined where no other record competes.</summary>
    public double LateSeconds { get; init; } = 0.6;

    /// <summary>A match of two clocks below this confidence is not made.</summary>
    public double LeastConfidence { get; init; } = 0.5;

    /// <summary>Fewer pairs prove nothing.</summary>
    public int LeastPairs { get; init; } = 3;

    /// <summary>Pairs that a further stretch, after a clock was set anew, needs.</summary>
    public int LeastPairsOfFurtherStretch { get; init; } = 4;

    /// <summary>Share of a further stretch's own records that must be joined.</summary>
    public double LeastShareOfFurtherStretch { get; init; } = 0.4;

    /// <summary>Records that are compared with all reference readings at once; longer lists are followed from such a start.</summary>
    public int SeedRecords { get; init; } = 64;
}
