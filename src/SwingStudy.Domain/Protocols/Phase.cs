namespace SwingStudy.Domain.Protocols;

/// <summary>One phase of a protocol.</summary>
/// <param name="Name">Kebab-case name; the word in the <c>phase</c> column.</param>
/// <param name="Role">What it is for.</param>
/// <param name="MinimumSessions">Sessions a player needs in it.</param>
/// <param name="MinimumSwings">Counted swings a session needs.</param>
/// <param name="DaysAfter">Days that must lie between the last session of the phase before and its first session; null: any.</param>
/// <param name="Cue">What the player is told; null: nothing.</param>
/// <param name="Why">Reason for its numbers.</param>
public sealed record Phase(string Name, PhaseRole Role, int MinimumSessions, int MinimumSwings, int? DaysAfter, string? Cue, string Why)
{
    /// <summary>Line of the protocol file, for messages.</summary>
    public int Line { get; init; }
}
