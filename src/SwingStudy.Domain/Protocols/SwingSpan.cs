namespace SwingStudy.Domain.Protocols;

/// <summary>Over what the swings of a player are counted.</summary>
public enum SwingSpan
{
    /// <summary>One session.</summary>
    Session,

    /// <summary>Seven days that end with the session's day.</summary>
    Week,
}
