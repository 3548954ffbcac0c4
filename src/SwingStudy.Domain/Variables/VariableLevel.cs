namespace SwingStudy.Domain.Variables;

/// <summary>What one value of a variable describes.</summary>
public enum VariableLevel
{
    /// <summary>One swing.</summary>
    Swing,

    /// <summary>One session.</summary>
    Session,

    /// <summary>One participant.</summary>
    Participant,
}
