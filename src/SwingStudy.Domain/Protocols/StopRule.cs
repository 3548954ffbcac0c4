namespace SwingStudy.Domain.Protocols;

/// <summary>A limit at which a session stops. Resuming needs a reason. Exactly one of a variable and a number of swings is watched.</summary>
/// <param name="Variable">What is watched, such as <c>pain_nrs</c>; null: the number of swings.</param>
/// <param name="AtLeast">The session stops at this value and above; null: not watched so.</param>
/// <param name="Rise">The session stops when the value rose by this much since its start; null: not watched so.</param>
/// <param name="Why">Reason.</param>
public sealed record StopRule(string? Variable, double? AtLeast, double? Rise, string Why)
{
    /// <summary>The session stops at this value and below; null: not watched so.</summary>
    public double? AtMost { get; init; }

    /// <summary>The session stops when the mean of the last <see cref="OverSwings"/> swings lies this many per cent below that of as many swings at its start.</summary>
    public double? FallPercent { get; init; }

    /// <summary>Swings over which <see cref="FallPercent"/> is taken.</summary>
    public int OverSwings { get; init; } = 5;

    /// <summary>Swings after which no more may follow; null: not counted.</summary>
    public int? MostSwings { get; init; }

    /// <summary>Over what swings are counted.</summary>
    public SwingSpan Per { get; init; }

    /// <summary>Only swings of this intent are watched, such as <c>maximum</c>; null: all.</summary>
    public string? Intent { get; init; }

    /// <summary>Line of the protocol file, for messages.</summary>
    public int Line { get; init; }
}
