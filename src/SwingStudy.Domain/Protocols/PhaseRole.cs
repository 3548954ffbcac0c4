namespace SwingStudy.Domain.Protocols;

/// <summary>What a phase is for.</summary>
public enum PhaseRole
{
    /// <summary>Before anything is changed.</summary>
    Baseline,

    /// <summary>While the cue or training is given.</summary>
    Intervention,

    /// <summary>Later, without cue and feedback: does it last?</summary>
    FollowUp,

    /// <summary>With another club, target or pressure: does it carry over?</summary>
    Transfer,
}
