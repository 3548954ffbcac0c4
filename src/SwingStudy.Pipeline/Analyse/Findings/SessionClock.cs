namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>How a device's clock ran in one session.</summary>
/// <param name="Session">The session.</param>
/// <param name="Source">The device's source.</param>
/// <param name="DriftPpm">Change of its offset in millionths of elapsed time.</param>
internal sealed record SessionClock(string Session, string Source, double DriftPpm);
