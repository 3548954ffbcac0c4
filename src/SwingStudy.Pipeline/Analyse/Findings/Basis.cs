namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>How a comparison stands to the plan.</summary>
internal enum Basis
{
    /// <summary>The protocol names it.</summary>
    Planned,

    /// <summary>The protocol names it since an amendment made when data could be seen.</summary>
    Amended,

    /// <summary>The protocol does not name it.</summary>
    Exploratory,
}
