namespace SwingStudy.Domain.Protocols;

/// <summary>When a comparison was planned.</summary>
public enum PlanTime
{
    /// <summary>The protocol was never locked, so that nothing can be shown.</summary>
    NotLocked,

    /// <summary>Locked, or amended, before data that could show an effect.</summary>
    BeforeData,

    /// <summary>Locked, added or changed when such data had been taken: exploratory.</summary>
    AfterData,

    /// <summary>The locked protocol does not plan it: exploratory.</summary>
    NotPlanned,
}
