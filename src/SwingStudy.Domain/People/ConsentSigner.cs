namespace SwingStudy.Domain.People;

/// <summary>Who said yes or no. An adult signs alone; for a minor a guardian consents and the minor assents, and both are needed.</summary>
public enum ConsentSigner
{
    /// <summary>The player, of age.</summary>
    Participant,

    /// <summary>A guardian of a minor.</summary>
    Guardian,

    /// <summary>The minor's own yes or no.</summary>
    Assent,
}
