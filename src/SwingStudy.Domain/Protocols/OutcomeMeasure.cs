namespace SwingStudy.Domain.Protocols;

/// <summary>A variable that the protocol names as an outcome.</summary>
/// <param name="Variable">Name in the dictionary.</param>
/// <param name="Role">What it is for.</param>
/// <param name="SmallestWorthwhile">The smallest change that matters; null where nobody could say.</param>
/// <param name="Contrasts">Names of the contrasts in which it is compared; empty: all of the protocol.</param>
public sealed record OutcomeMeasure(string Variable, OutcomeRole Role, WorthwhileChange? SmallestWorthwhile, IReadOnlyList<string> Contrasts)
{
    /// <summary>The scatter to expect, before the study has its own; null where nobody could say.</summary>
    public ExpectedNoise? Noise { get; init; }

    /// <summary>Line of the protocol file, for messages.</summary>
    public int Line { get; init; }
}
