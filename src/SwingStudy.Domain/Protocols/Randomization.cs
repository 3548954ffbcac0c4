namespace SwingStudy.Domain.Protocols;

/// <summary>What chance decides, drawn before data.</summary>
/// <param name="Kind"><c>phase-start</c>, <c>order</c>, <c>alternation</c>.</param>
/// <param name="EarliestSession">First session at which the intervention may start (phase-start).</param>
/// <param name="LatestSession">Last session at which it may start (phase-start).</param>
/// <param name="Seed">Seed of the draw.</param>
public sealed record Randomization(string Kind, int? EarliestSession, int? LatestSession, ulong Seed)
{
    /// <summary>The intervention starts at a session drawn between two.</summary>
    public const string PhaseStart = "phase-start";

    /// <summary>The order in which players start the intervention is drawn.</summary>
    public const string Order = "order";

    /// <summary>The order in which conditions alternate is drawn.</summary>
    public const string Alternation = "alternation";

    /// <summary>All kinds.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [PhaseStart, Order, Alternation];

    /// <summary>Reason for the window or scheme.</summary>
    public string Why { get; init; } = "";

    /// <summary>Line of the protocol file, for messages.</summary>
    public int Line { get; init; }
}
