using NodaTime;

namespace SwingStudy.Domain.Protocols;

/// <summary>One draw of chance: for whom, from which set, under which version of the protocol.</summary>
public sealed record Draw
{
    /// <summary>Counted from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Number of the protocol version that it carries out.</summary>
    public required int ProtocolVersion { get; init; }

    /// <summary>Kind, a word of <see cref="Randomization.Kinds"/>.</summary>
    public required string Kind { get; init; }

    /// <summary>Seed of the draw.</summary>
    public required ulong Seed { get; init; }

    /// <summary>Whether the players were drawn together and belong into one test (multiple baseline); else each player is a test of its own.</summary>
    public required bool IsJoint { get; init; }

    /// <summary>Whether it was drawn which player has which window.</summary>
    public bool OrderDrawn { get; init; }

    /// <summary>
    /// Windows of a joint draw, one a tier: admissible numbers of sessions before the intervention. Where the order was not drawn, tier i belongs to
    /// player i of <see cref="Players"/>. Empty where each player is drawn alone.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<int>> Windows { get; init; } = [];

    /// <summary>Number of assignments that could have been drawn: of all players together in a joint draw, else of each player.</summary>
    public required double Assignments { get; init; }

    /// <summary>When.</summary>
    public required Instant At { get; init; }

    /// <summary>Who.</summary>
    public required string Actor { get; init; }

    /// <summary>The players, by code.</summary>
    public required IReadOnlyList<DrawnPlayer> Players { get; init; }

    /// <summary>The smallest p that a randomization test of this draw can give.</summary>
    public double SmallestPossibleP => 1 / Assignments;
}
