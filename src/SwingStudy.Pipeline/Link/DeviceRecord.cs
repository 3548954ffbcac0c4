using SwingStudy.Pipeline.Link.Clocks;

namespace SwingStudy.Pipeline.Link;

/// <summary>One record of a device.</summary>
/// <param name="Capture">The capture.</param>
/// <param name="Reading">When impact was, on the device's clock.</param>
/// <param name="IsGuess">The device does not tell impact in this record.</param>
internal sealed record DeviceRecord(Capture Capture, ClockReading Reading, bool IsGuess);
