using SwingStudy.Pipeline.Link.Clocks;

namespace SwingStudy.Pipeline.Link;

/// <summary>A device and how its clock runs against the reference.</summary>
/// <param name="Records">The device.</param>
/// <param name="Alignment">Its clock; null for the reference itself.</param>
internal sealed record AlignedDevice(DeviceRecords Records, ClockAlignment? Alignment)
{
    /// <summary>Where no clock was made: the capture that each record would join, and the time between them.</summary>
    public Dictionary<Capture, (Capture With, double Residual)> Candidates { get; init; } = [];

    /// <summary>Whether its records are on the reference clock.</summary>
    public bool IsAligned => Alignment is null || Alignment.Stretches.Count > 0;

    /// <summary>The stretch of a told record that was not joined: the only one, or the one among whose records it lies; null when that cannot be told.</summary>
    public ClockStretch? StretchAt(int told) => Alignment switch
    {
        null => null,
        { Stretches.Count: 1 } => Alignment.Stretches[0],
        _ => Alignment.Stretches.Where(stretch => stretch.FirstDevice <= told && told <= stretch.LastDevice).ToList() is [var only] ? only : null,
    };

    /// <summary>The line that holds at a time of the device, and how sure it is; null when that cannot be told.</summary>
    public (ClockLine Line, double Confidence)? LineFor(double deviceSeconds)
    {
        if (Alignment is null)
            return (ClockLine.Same, 1);
        if (Alignment.Stretches.Count == 1)
            return (Alignment.Stretches[0].Line, Alignment.Stretches[0].Confidence);
        List<DeviceRecord> told = [.. Records.Records.Where(record => !record.IsGuess)];
        return Alignment.Stretches.Where(stretch =>
                told[stretch.FirstDevice].Reading.Seconds <= deviceSeconds && deviceSeconds <= told[stretch.LastDevice].Reading.Seconds).ToList() is [var only]
            ? (only.Line, only.Confidence)
            : null;
    }
}
