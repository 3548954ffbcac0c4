namespace SwingStudy.Pipeline.Link.Clocks;

/// <summary>One moment as two clocks saw it.</summary>
/// <param name="Reference">Position among the reference readings.</param>
/// <param name="Device">Position among the device's readings.</param>
/// <param name="ResidualSeconds">Device time on the reference clock minus reference time, beyond what cut times leave open; positive: the device was late.</param>
/// <param name="IsLate">The residual is beyond the device's ordinary jitter: an odd trigger that no other record explains.</param>
internal sealed record ClockPair(int Reference, int Device, double ResidualSeconds, bool IsLate = false);
