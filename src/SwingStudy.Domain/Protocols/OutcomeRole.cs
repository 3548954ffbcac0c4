namespace SwingStudy.Domain.Protocols;

/// <summary>What an outcome is for.</summary>
public enum OutcomeRole
{
    /// <summary>Decides the question.</summary>
    Primary,

    /// <summary>Also of interest.</summary>
    Secondary,

    /// <summary>Tells what in the movement changed.</summary>
    Mechanism,

    /// <summary>Watches for harm.</summary>
    Safety,
}
