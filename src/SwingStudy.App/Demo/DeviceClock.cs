using NodaTime;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.App.Demo;

/// <summary>The clock of a device during one stay: set by hand, and a little fast or slow.</summary>
/// <param name="From">Start of the stay.</param>
/// <param name="Ahead">Seconds ahead of true time at the start.</param>
/// <param name="Drift">Seconds gained a second.</param>
internal sealed record DeviceClock(Instant From, double Ahead, double Drift)
{
    /// <summary>Draws a clock that is some seconds off and drifts by up to 80 millionths.</summary>
    public static DeviceClock Draw(Instant from, Xoshiro256 chance) => new(from, chance.Between(-9, 9), chance.Between(-80e-6, 80e-6));

    /// <summary>What it shows at a moment, to the millisecond.</summary>
    public Instant Shows(Instant moment)
    {
        var shift = Ahead + (Drift * (moment - From).TotalSeconds);
        return moment + Duration.FromMilliseconds((long)Math.Round(1000 * shift));
    }
}
