namespace SwingStudy.Domain.Protocols;

/// <summary>A channel whose whole curves are compared between phases, beside the single numbers that outcomes are.</summary>
/// <param name="Channel">Name in the <c>channel</c> column of <c>swing_curves</c>.</param>
/// <param name="Contrasts">Names of the contrasts in which it is compared; empty: all of the protocol.</param>
public sealed record CurvePlan(string Channel, IReadOnlyList<string> Contrasts)
{
    /// <summary>Line of the protocol file, for messages.</summary>
    public int Line { get; init; }
}
