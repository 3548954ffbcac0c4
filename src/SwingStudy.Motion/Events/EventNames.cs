namespace SwingStudy.Motion.Events;

/// <summary>Names of the events of a swing, in their order.</summary>
public static class EventNames
{
    /// <summary>End of the still time before the swing.</summary>
    public const string Address = "address";

    /// <summary>The club begins to move away.</summary>
    public const string Start = "start";

    /// <summary>The pelvis reverses; it may do so before the club.</summary>
    public const string Transition = "transition";

    /// <summary>The club reverses.</summary>
    public const string Top = "top";

    /// <summary>The grip is fastest.</summary>
    public const string GripPeak = "grip_peak";

    /// <summary>Club and ball meet, or the head passes the ball's place.</summary>
    public const string Impact = "impact";

    /// <summary>The club has come to rest.</summary>
    public const string Finish = "finish";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } = [Address, Start, Transition, Top, GripPeak, Impact, Finish];
}
