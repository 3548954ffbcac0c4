namespace SwingStudy.Domain.Findings;

/// <summary>What a reason of a finding is about, in the order in which people read them.</summary>
public enum ReasonKind
{
    /// <summary>What the verdict rests on.</summary>
    Evidence,

    /// <summary>What in the movement changed with the outcome.</summary>
    Mechanism,

    /// <summary>What could explain the change otherwise, or limits what can be said.</summary>
    Rival,

    /// <summary>Which published design standards the data meet.</summary>
    Standard,

    /// <summary>What would settle the question.</summary>
    NextStep,
}
