namespace SwingStudy.Domain.Protocols;

/// <summary>What was drawn for one player.</summary>
public sealed record DrawnPlayer
{
    /// <summary>Pseudonym.</summary>
    public required string Participant { get; init; }

    /// <summary>What could have been drawn; in a joint draw of order the set of this player's tier.</summary>
    public required AssignmentSet Set { get; init; }

    /// <summary>What was drawn, an element of the set: one flag a session, <c>1</c> with the intervention.</summary>
    public required string Assignment { get; init; }

    /// <summary>Which of the windows of <see cref="Draw.Windows"/> the player got, counted from 0; null outside joint draws.</summary>
    public int? Tier { get; init; }

    /// <summary>Phase of each session to come, those after the drawn part included, in order.</summary>
    public required IReadOnlyList<string> Phases { get; init; }

    /// <summary>Sessions before the intervention starts for the first time.</summary>
    public int Start => Assignment.IndexOf('1', StringComparison.Ordinal);
}
