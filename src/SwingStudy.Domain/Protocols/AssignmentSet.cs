namespace SwingStudy.Domain.Protocols;

/// <summary>Every way in which the sessions of one player could have been given their condition, each equally likely.</summary>
/// <remarks>
/// An assignment is one flag a session, in order: <c>0</c> without the intervention, <c>1</c> with it. The test of the study goes through exactly this
/// set. Source: Edgington and Onghena (2007), Randomization Tests, 4th ed.
/// </remarks>
public sealed record AssignmentSet
{
    /// <summary>Most assignments that are written out one by one; larger sets are told by their rule and number.</summary>
    public const int MostListed = 1000;

    /// <summary>Kind of the draw, a word of <see cref="Randomization.Kinds"/>.</summary>
    public required string Kind { get; init; }

    /// <summary>Sessions that the draw decides about.</summary>
    public required int Sessions { get; init; }

    /// <summary>Admissible sessions at which the intervention starts, counted from 0 (the number of sessions before it); empty where no start is drawn.</summary>
    public IReadOnlyList<int> Starts { get; init; } = [];

    /// <summary>Number of phases in turn whose change points are drawn; null where none are.</summary>
    public int? Phases { get; init; }

    /// <summary>Fewest sessions of each of these phases; null where none are.</summary>
    public int? Least { get; init; }

    /// <summary>Sessions with the intervention, of alternating conditions; null otherwise.</summary>
    public int? WithIntervention { get; init; }

    /// <summary>Most sessions of one condition in a row, of alternating conditions; null otherwise.</summary>
    public int? LongestRun { get; init; }

    /// <summary>Number of assignments.</summary>
    public required double Count { get; init; }

    /// <summary>The assignments one by one; null when there are more than <see cref="MostListed"/>.</summary>
    public IReadOnlyList<string>? Listed { get; init; }
}
