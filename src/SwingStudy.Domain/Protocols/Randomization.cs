namespace SwingStudy.Domain.Protocols;

/// <summary>What chance decides, drawn before data.</summary>
/// <param name="Kind">One of <see cref="Kinds"/>.</param>
/// <param name="EarliestSession">First session at which the intervention may start; of the first player, where players are staggered.</param>
/// <param name="LatestSession">Last session at which it may start; of the first player, where players are staggered.</param>
/// <param name="Seed">Seed of the draw.</param>
public sealed record Randomization(string Kind, int? EarliestSession, int? LatestSession, ulong Seed)
{
    /// <summary>The intervention starts at a session drawn between two.</summary>
    public const string PhaseStart = "phase-start";

    /// <summary>The order in which players start the intervention is drawn.</summary>
    public const string Order = "order";

    /// <summary>The order in which players start is drawn, and each player's start within the window of its place.</summary>
    public const string OrderAndStart = "order-and-start";

    /// <summary>All changes between phases are drawn at once, every phase keeping its least length.</summary>
    public const string PhaseChanges = "phase-changes";

    /// <summary>The order in which conditions alternate is drawn.</summary>
    public const string Alternation = "alternation";

    /// <summary>All kinds.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [PhaseStart, Order, OrderAndStart, PhaseChanges, Alternation];

    /// <summary>Sessions between the windows of one player and the next where a protocol draws an order and does not say.</summary>
    public const int DefaultStagger = 1;

    /// <summary>Most sessions of one condition in a row where a protocol draws an alternation and does not say.</summary>
    public const int DefaultLongestRun = 2;

    /// <summary>Sessions between the window of one player and the next (multiple baseline); null where the protocol does not say.</summary>
    public int? Stagger { get; init; }

    /// <summary>Sessions of all phases that are drawn together (phase-changes); null elsewhere.</summary>
    public int? Sessions { get; init; }

    /// <summary>Most sessions of one condition in a row (alternation); null where the protocol does not say.</summary>
    public int? LongestRun { get; init; }

    /// <summary>Reason for the window or scheme.</summary>
    public string Why { get; init; } = "";

    /// <summary>Line of the protocol file, for messages.</summary>
    public int Line { get; init; }
}
