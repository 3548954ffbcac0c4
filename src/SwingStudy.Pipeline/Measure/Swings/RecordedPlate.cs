using SwingStudy.Motion.Geometry;
using SwingStudy.Pipeline.Measure.Recordings;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>One plate in a recording of a swing.</summary>
/// <param name="Plate">A name of <see cref="Domain.Curves.Channels.Plates"/>.</param>
/// <param name="Recording">The recording.</param>
/// <param name="Impact">Impact in it.</param>
internal sealed record RecordedPlate(string Plate, Recording Recording, Impact Impact)
{
    /// <summary>Times of its samples, impact being zero.</summary>
    public TimeAxis Axis => Recording.ForceAxis(Plate, Impact.TimeS);

    /// <summary>Contact on the device's clock, milliseconds; NaN when the recording does not tell when it began.</summary>
    public double ContactMillis => Recording.FirstSampleMillis + (1000 * Impact.TimeS);
}
