namespace SwingStudy.Motion.Events;

/// <summary>What one swing tells of the place of contact, as coordinates along the direction in which the heads of a session travel at contact.</summary>
/// <param name="SpeedMps">Speed of the head along that direction, above zero.</param>
/// <param name="MarkedAtM">Where the head was when contact was marked, metres; NaN without a mark.</param>
/// <param name="MarkFloorM">Way of the head within the standard error that a mark has at least, as by the sampling it was taken from; 0 when none is known.</param>
/// <param name="BreakAtM">Where it was when the shaft's turn broke; NaN without a break.</param>
/// <param name="BreakScatterM">Standard error of that.</param>
/// <param name="AddressAtM">Where the head was set down before the swing; NaN when it was not.</param>
public sealed record ContactEvidence(double SpeedMps, double MarkedAtM, double MarkFloorM, double BreakAtM, double BreakScatterM, double AddressAtM = double.NaN)
{
    /// <summary>Whether contact was marked.</summary>
    public bool HasMark => !double.IsNaN(MarkedAtM);

    /// <summary>Whether a break was found.</summary>
    public bool HasBreak => !double.IsNaN(BreakAtM);

    /// <summary>Whether the head was set down.</summary>
    public bool HasAddress => !double.IsNaN(AddressAtM);

    /// <summary>The same without the mark.</summary>
    public ContactEvidence WithoutMark() => this with { MarkedAtM = double.NaN };

    /// <summary>The same without the break.</summary>
    public ContactEvidence WithoutBreak() => this with { BreakAtM = double.NaN };
}
