namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>What can be said of a change.</summary>
internal enum Verdict
{
    /// <summary>The change exceeds noise and, where one is stated, the smallest worthwhile change.</summary>
    Supported,

    /// <summary>Something speaks for a change, and something stands in the way.</summary>
    Suggestive,

    /// <summary>The data could have come about without a change.</summary>
    NotShown,

    /// <summary>The data cannot answer.</summary>
    CannotTell,
}
