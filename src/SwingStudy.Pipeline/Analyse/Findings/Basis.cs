namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>How a comparison stands to the plan.</summary>
internal enum Basis
{
    /// <summary>The protocol names it.</summary>
    Planned,

    /// <summary>The protocol names it in its present form only since data could be seen: by an amendment, or because it was locked that late.</summary>
    Amended,

    /// <summary>The protocol does not name it.</summary>
    Exploratory,
}
