namespace SwingStudy.Domain.Protocols;

/// <summary>A limit at which a session stops. Resuming needs a reason.</summary>
/// <param name="Variable">What is watched, such as <c>pain_nrs</c>.</param>
/// <param name="AtLeast">The session stops at this value and above; null: not watched so.</param>
/// <param name="Rise">The session stops when the value rose by this much since the start; null: not watched so.</param>
/// <param name="Why">Reason.</param>
public sealed record StopRule(string Variable, double? AtLeast, double? Rise, string Why)
{
    /// <summary>Line of the protocol file, for messages.</summary>
    public int Line { get; init; }
}
