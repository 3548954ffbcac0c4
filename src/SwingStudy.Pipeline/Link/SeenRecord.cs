using SwingStudy.Pipeline.Link.Clocks;

namespace SwingStudy.Pipeline.Link;

/// <summary>One record of a moment.</summary>
/// <param name="Device">Its device.</param>
/// <param name="Record">The record.</param>
/// <param name="Mapped">Its time on the reference clock.</param>
/// <param name="Line">The stretch of the device's clock.</param>
/// <param name="IsLate">An odd trigger.</param>
/// <param name="Confidence">How sure the clock is.</param>
internal sealed record SeenRecord(DeviceRecords Device, DeviceRecord Record, ClockReading Mapped, ClockLine Line, bool IsLate, double Confidence)
{
    /// <summary>Whether its time is to be trusted more.</summary>
    public bool IsBetterThan(SeenRecord other) =>
        (Record.IsGuess, IsLate, Mapped.Width, Device.Precision).CompareTo((other.Record.IsGuess, other.IsLate, other.Mapped.Width, other.Device.Precision)) < 0;

    /// <summary>How much later than a moment it is, beyond what cut times leave open.</summary>
    public double After(SeenMoment moment) => Mapped.After(moment.Reading);
}
