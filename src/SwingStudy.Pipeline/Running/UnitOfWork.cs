namespace SwingStudy.Pipeline.Running;

/// <summary>The share of a stage's work that is done, skipped and recorded as one.</summary>
public enum UnitOfWork
{
    /// <summary>One session of one player; what lies outside all sessions of a player is a unit of its own.</summary>
    Session,

    /// <summary>One player.</summary>
    Participant,

    /// <summary>The whole study.</summary>
    Study,
}
