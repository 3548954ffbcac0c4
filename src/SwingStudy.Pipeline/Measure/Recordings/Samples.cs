using SwingStudy.Motion.Geometry;

namespace SwingStudy.Pipeline.Measure.Recordings;

/// <summary>Samples of one channel of a recording.</summary>
/// <param name="Values">The samples, canonical unit, NaN where lost.</param>
/// <param name="SampleRateHz">Samples a second.</param>
internal sealed record Samples(double[] Values, double SampleRateHz)
{
    /// <summary>Times of the samples with a moment of the recording as zero.</summary>
    /// <param name="zeroS">That moment, from the first sample.</param>
    public TimeAxis Axis(double zeroS) => new(SampleRateHz, -zeroS, Values.Length);
}
