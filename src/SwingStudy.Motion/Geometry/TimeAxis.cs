namespace SwingStudy.Motion.Geometry;

/// <summary>When the samples of a curve were taken.</summary>
/// <param name="SampleRateHz">Samples a second.</param>
/// <param name="FirstTimeS">Time of the first sample; in a swing, relative to impact.</param>
/// <param name="Count">Number of samples.</param>
public readonly record struct TimeAxis(double SampleRateHz, double FirstTimeS, int Count)
{
    /// <summary>Time of the last sample.</summary>
    public double LastTimeS => TimeOf(Count - 1);

    /// <summary>Time at a position, which may lie between samples.</summary>
    public double TimeOf(double position) => FirstTimeS + (position / SampleRateHz);

    /// <summary>Position of a time, between samples and beyond the ends.</summary>
    public double PositionOf(double timeS) => (timeS - FirstTimeS) * SampleRateHz;

    /// <summary>First sample at or after a time; may be <see cref="Count"/>.</summary>
    public int From(double timeS) => Math.Clamp((int)Math.Ceiling(PositionOf(timeS) - Slack), 0, Count);

    /// <summary>Last sample at or before a time; may be −1.</summary>
    public int To(double timeS) => Math.Clamp((int)Math.Floor(PositionOf(timeS) + Slack), -1, Count - 1);

    /// <summary>Whether a time lies between the first and the last sample.</summary>
    public bool Covers(double timeS) => PositionOf(timeS) >= -Slack && PositionOf(timeS) <= Count - 1 + Slack;

    // A time that was computed from a sample's own position may miss it by rounding.
    private const double Slack = 1e-6;
}
