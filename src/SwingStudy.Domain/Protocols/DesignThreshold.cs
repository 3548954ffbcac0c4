namespace SwingStudy.Domain.Protocols;

/// <summary>What an edition of design standards asks of one design.</summary>
public sealed record DesignThreshold
{
    /// <summary>The design, in kebab-case.</summary>
    public required string Design { get; init; }

    /// <summary>Phases that are asked for: of one player in a withdrawal design, of all players in a multiple baseline, conditions in an alternating one.</summary>
    public required int Phases { get; init; }

    /// <summary>Points of each phase that meet the standard.</summary>
    public required int Meets { get; init; }

    /// <summary>Points of each phase that meet it with reservations.</summary>
    public required int Reservations { get; init; }

    /// <summary>Most sessions of one condition in a row; null where the design has no such rule.</summary>
    public int? LongestRun { get; init; }

    /// <summary>Where the numbers come from.</summary>
    public required string Basis { get; init; }
}
