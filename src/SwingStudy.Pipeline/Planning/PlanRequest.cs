using SwingStudy.Domain.Protocols;

namespace SwingStudy.Pipeline.Planning;

/// <summary>What a plan shall be made for.</summary>
public sealed record PlanRequest
{
    /// <summary>The protocol.</summary>
    public required Protocol Protocol { get; init; }

    /// <summary>Scatter of the outcome.</summary>
    public required OutcomeNoise Noise { get; init; }

    /// <summary>True change to be found, canonical unit, not zero.</summary>
    public required double Change { get; init; }

    /// <summary>Standard deviation of the true change over players, canonical unit; 0 when all change alike.</summary>
    public double ChangeBetweenPlayers { get; init; }

    /// <summary>Numbers of sessions of each phase to try.</summary>
    public required IReadOnlyList<int> Sessions { get; init; }

    /// <summary>Numbers of swings of each session to try.</summary>
    public required IReadOnlyList<int> Swings { get; init; }

    /// <summary>Players of the study.</summary>
    public required int Players { get; init; }

    /// <summary>Power wanted, a share.</summary>
    public double Power { get; init; } = 0.8;

    /// <summary>Simulated studies for each size.</summary>
    public int Replications { get; init; } = 1000;
}
