namespace SwingStudy.Pipeline.Running;

/// <summary>The share of a stage's work that is done, skipped and recorded as one.</summary>
public enum UnitOfWork
{
    /// <summary>One session of one player; what lies outside all sessions of a player is a unit of its own.</summary>
    Session,

    /// <summary>All sessions of one calendar day, together with what names nobody that day; what lies outside the sessions of a player is a unit of
    /// its own, and so is what names nobody outside those days. What is written for a session carries the session's name.</summary>
    Day,

    /// <summary>One player.</summary>
    Participant,

    /// <summary>The whole study.</summary>
    Study,
}
