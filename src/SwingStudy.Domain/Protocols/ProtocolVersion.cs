using NodaTime;
using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Domain.Protocols;

/// <summary>One version of a study's protocol as it was locked or amended.</summary>
public sealed record ProtocolVersion
{
    /// <summary>1 for the lock, one more with each amendment.</summary>
    public required int Number { get; init; }

    /// <summary>Hash of the bytes of the declaration.</summary>
    public required Sha256 Hash { get; init; }

    /// <summary>The version that the declaration calls itself.</summary>
    public required string Version { get; init; }

    /// <summary>The declaration itself.</summary>
    public required string Text { get; init; }

    /// <summary>When it was locked or amended.</summary>
    public required Instant At { get; init; }

    /// <summary>Who did it.</summary>
    public required string Actor { get; init; }

    /// <summary>Why it was amended; null for the lock.</summary>
    public string? Reason { get; init; }

    /// <summary>What was already known, in the words of whoever did it; null when nothing was said.</summary>
    public string? Known { get; init; }

    /// <summary>What had been taken by then, phases in the protocol's order.</summary>
    public IReadOnlyList<PhaseData> Taken { get; init; } = [];

    /// <summary>The comparisons it plans.</summary>
    public IReadOnlyList<PlannedComparison> Comparisons { get; init; } = [];

    /// <summary>Whether data that could show an effect had been taken before.</summary>
    public bool IsAfterData => Taken.Any(data => data.TellsOfEffects);
}
