namespace SwingStudy.Pipeline.Link;

/// <summary>A swing of a session and when it was struck.</summary>
/// <param name="Id">The swing.</param>
/// <param name="Session">Its session.</param>
/// <param name="StruckMillis">Impact, on the clock of the device that gives the session its swings.</param>
internal sealed record StruckSwing(string Id, PlayerSession Session, long StruckMillis);
