namespace SwingStudy.Domain.Sources;

/// <summary>What one row of an export describes.</summary>
public enum RowMeaning
{
    /// <summary>One swing as one device saw it.</summary>
    Swings,

    /// <summary>One moment of a stream, such as a wearable's reading; joined to swings by a window of time.</summary>
    Moments,

    /// <summary>One session of one player, as in a coach's log; goes to the registry of sessions.</summary>
    Sessions,

    /// <summary>Samples of curves: one or many recordings of plates, markers or other channels a file.</summary>
    Recordings,
}
