namespace SwingStudy.Pipeline.Link;

/// <summary>Words of the <c>method</c> column of links: how a capture was linked, or why it was not.</summary>
/// <remarks>Recordings that are of no swing carry their purpose as the word: <c>zero</c> and <c>quiet</c> belong to a session.</remarks>
public static class LinkMethods
{
    /// <summary>The capture is the swing: it comes from the source that gives the session its swings.</summary>
    public const string Skeleton = "session";

    /// <summary>Matched by time after the clocks of two devices were compared.</summary>
    public const string Time = "time";

    /// <summary>A moment within the window of time around the swing.</summary>
    public const string Window = "window";

    /// <summary>A person said which swing it belongs to, or that it belongs to none.</summary>
    public const string Decision = "decision";

    /// <summary>A newer revision of the same record stands for it.</summary>
    public const string Replaced = "replaced";

    /// <summary>No session of the player covers its time.</summary>
    public const string NoSession = "no-session";

    /// <summary>No swing of the session has a matching time: the other devices missed the swing, or this one triggered falsely.</summary>
    public const string MissedOrFalse = "missed-or-false";

    /// <summary>The clocks fit each other in more than one way; a person has to decide.</summary>
    public const string LowConfidence = "low-confidence";

    /// <summary>A swing that several devices saw while players took turns, and no record names who swung; a person has to decide.</summary>
    public const string UnknownPlayer = "unknown-player";

    /// <summary>A moment that belongs to no swing.</summary>
    public const string OutsideWindow = "outside-window";

    /// <summary>Empty plates: belongs to the session.</summary>
    public const string Zero = "zero";

    /// <summary>Quiet standing: belongs to the session.</summary>
    public const string Quiet = "quiet";

    /// <summary>Whether a capture belongs to a session and to no swing.</summary>
    public static bool IsOfSession(string? method) => method is Zero or Quiet;

    /// <summary>Whether a person should look at a capture that was not linked this way.</summary>
    public static bool WaitsForDecision(string? method) => method is LowConfidence or UnknownPlayer;
}
