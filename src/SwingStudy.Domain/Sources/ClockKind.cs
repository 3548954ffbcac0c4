namespace SwingStudy.Domain.Sources;

/// <summary>What the clock column of a recording counts.</summary>
public enum ClockKind
{
    /// <summary>Time in a unit of time.</summary>
    Time,

    /// <summary>The time of day on the wall, as <c>14:05:06.250</c>.</summary>
    TimeOfDay,

    /// <summary>Samples, at the stated rate.</summary>
    Frames,
}
