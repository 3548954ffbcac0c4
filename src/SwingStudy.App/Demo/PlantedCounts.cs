namespace SwingStudy.App.Demo;

/// <summary>What the exports hold, counted while they are written.</summary>
internal sealed record PlantedCounts
{
    /// <summary>Sessions in the coach's log.</summary>
    public required int Sessions { get; init; }

    /// <summary>Swings at a ball.</summary>
    public required int Swings { get; init; }

    /// <summary>Practice swings without a ball.</summary>
    public required int PracticeSwings { get; init; }

    /// <summary>Swings at a ball of which the bay sensor has no row.</summary>
    public required int MissedByBay { get; init; }

    /// <summary>Swings and practice swings of which the gate has no pass.</summary>
    public required int MissedByGate { get; init; }

    /// <summary>Passes of the gate without any swing.</summary>
    public required int FalsePasses { get; init; }

    /// <summary>Recordings of the force plates with a trigger, the false ones among them.</summary>
    public required int OnPlates { get; init; }

    /// <summary>Recordings of the force plates in which nobody swings.</summary>
    public required int FalseOnPlates { get; init; }

    /// <summary>Rows of the bay with a misread speed that no corrected export mends.</summary>
    public required int Misreads { get; init; }

    /// <summary>Misread rows that a corrected export mends.</summary>
    public required int MendedMisreads { get; init; }

    /// <summary>Files of the bay sensor, all kinds.</summary>
    public required int BayFiles { get; init; }

    /// <summary>Files of the bay that are copies of another, byte by byte.</summary>
    public required int Copies { get; init; }

    /// <summary>Files of the bay that were exported again with corrected values.</summary>
    public required int CorrectedFiles { get; init; }

    /// <summary>Files of all sources.</summary>
    public required int Files { get; init; }
}
