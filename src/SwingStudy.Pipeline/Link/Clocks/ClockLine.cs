namespace SwingStudy.Pipeline.Link.Clocks;

/// <summary>One stretch of a device's clock against the reference clock: t_reference = t_device + offset + drift · (t_device − anchor).</summary>
/// <param name="OffsetSeconds">Offset at the anchor, to add to the device's time.</param>
/// <param name="Drift">Change of the offset over elapsed device time, both in seconds: 1e-6 is one part in a million.</param>
/// <param name="AnchorSeconds">Device time at which the offset holds.</param>
internal readonly record struct ClockLine(double OffsetSeconds, double Drift, double AnchorSeconds)
{
    /// <summary>The clock of the reference itself.</summary>
    public static readonly ClockLine Same = new(0, 0, 0);

    /// <summary>A device time on the reference clock.</summary>
    public double Map(double deviceSeconds) => deviceSeconds + OffsetSeconds + (Drift * (deviceSeconds - AnchorSeconds));

    /// <summary>A device's reading on the reference clock.</summary>
    public ClockReading Map(ClockReading device) => device with { Seconds = Map(device.Seconds) };

    /// <summary>A reference time on the device's clock.</summary>
    public double Unmap(double referenceSeconds) => (referenceSeconds - OffsetSeconds + (Drift * AnchorSeconds)) / (1 + Drift);

    /// <summary>The same line, told from another device time.</summary>
    public ClockLine AnchoredAt(double deviceSeconds) => new(OffsetSeconds + (Drift * (deviceSeconds - AnchorSeconds)), Drift, deviceSeconds);

    /// <summary>The line with its offset moved.</summary>
    public ClockLine Moved(double seconds) => this with { OffsetSeconds = OffsetSeconds + seconds };
}
