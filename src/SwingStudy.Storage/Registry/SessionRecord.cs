using NodaTime;
using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Storage.Registry;

/// <summary>One player on one occasion, with its conditions.</summary>
public sealed record SessionRecord
{
    /// <summary>Identifier: <c>P01-20260907-1</c>.</summary>
    public required string Id { get; init; }

    /// <summary>The player.</summary>
    public required ParticipantId Participant { get; init; }

    /// <summary>Start in UTC.</summary>
    public required Instant StartedAt { get; init; }

    /// <summary>Start as the clock on the wall showed it.</summary>
    public required LocalDateTime StartedLocal { get; init; }

    /// <summary>Phase of the protocol; null until it is known.</summary>
    public string? Phase { get; init; }

    /// <summary>Where.</summary>
    public string? Site { get; init; }

    /// <summary>Club, where one was used throughout.</summary>
    public string? Club { get; init; }

    /// <summary>Ball.</summary>
    public string? Ball { get; init; }

    /// <summary>Surface.</summary>
    public string? Surface { get; init; }

    /// <summary>The coaching cue.</summary>
    public string? Cue { get; init; }

    /// <summary>Swings that were planned.</summary>
    public int? PlannedSwings { get; init; }

    /// <summary>Other session variables as a JSON object, by variable name.</summary>
    public string Variables { get; init; } = "{}";

    /// <summary>Remark; no name.</summary>
    public string? Note { get; init; }

    /// <summary>The original it was read from; null when a person entered it.</summary>
    public Sha256? Original { get; init; }

    /// <summary>Row in that original.</summary>
    public int? OriginalRow { get; init; }

    /// <summary>1 at first, one more with each correction; set by the registry.</summary>
    public int Revision { get; init; } = 1;
}
