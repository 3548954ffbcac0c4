namespace SwingStudy.Statistics.Change;

/// <summary>Why no verdict better than 'cannot tell' can stand.</summary>
public enum CannotTell
{
    /// <summary>Nothing stands against a verdict.</summary>
    No,

    /// <summary>A phase has no swing.</summary>
    PhaseWithoutSwings,

    /// <summary>A phase has one session and the study knows no session variance.</summary>
    OneSessionWithoutSessionVariance,

    /// <summary>No session has a second swing and the study knows no swing variance.</summary>
    SwingVarianceUnknown,
}
