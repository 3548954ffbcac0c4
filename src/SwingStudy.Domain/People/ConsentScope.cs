namespace SwingStudy.Domain.People;

/// <summary>What a consent is for. Each is asked and given on its own; none includes another.</summary>
public enum ConsentScope
{
    /// <summary>Measurements for the player's own lessons.</summary>
    Coaching,

    /// <summary>Measurements for the study.</summary>
    Research,

    /// <summary>Passing pseudonymous data on to others.</summary>
    Sharing,

    /// <summary>Pictures that show the player.</summary>
    Video,

    /// <summary>Being asked again later.</summary>
    ReContact,
}
