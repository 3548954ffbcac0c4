namespace SwingStudy.Pipeline.Link;

/// <summary>One swing as two devices saw it.</summary>
/// <param name="Reference">Position among the reference times.</param>
/// <param name="Device">Position among the device's times.</param>
/// <param name="ResidualMillis">Device time minus offset minus reference time.</param>
internal readonly record struct ClockPair(int Reference, int Device, long ResidualMillis);
