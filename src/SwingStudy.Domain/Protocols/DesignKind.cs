namespace SwingStudy.Domain.Protocols;

/// <summary>The design of a study.</summary>
public enum DesignKind
{
    /// <summary>Baseline, intervention, and what follows.</summary>
    PrePost,

    /// <summary>The intervention is taken away and given again.</summary>
    Withdrawal,

    /// <summary>Players start the intervention at staggered times.</summary>
    MultipleBaseline,

    /// <summary>Conditions alternate in quick turns.</summary>
    Alternating,

    /// <summary>The same players measured again with nothing changed.</summary>
    Reliability,

    /// <summary>Two devices record the same swings.</summary>
    Agreement,
}
