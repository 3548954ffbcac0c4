using SwingStudy.Motion.Geometry;

namespace SwingStudy.Pipeline.Measure.Recordings;

/// <summary>The curves of one capture, on the time of its first sample.</summary>
/// <param name="Capture">The capture.</param>
/// <param name="Source">Its source.</param>
/// <param name="Device">Its device.</param>
/// <param name="Purpose">swing, zero or quiet.</param>
/// <param name="FirstSampleMillis">Time of the first sample on the device's clock, milliseconds since 1970 UTC; NaN when unknown.</param>
/// <param name="ContactS">Contact as the device saw it itself, from the first sample; NaN when it did not.</param>
/// <param name="TriggerS">The device's trigger, from the first sample; NaN when there is none.</param>
/// <param name="Channels">Samples of each channel.</param>
internal sealed record Recording(
    string Capture, string Source, string Device, string Purpose, double FirstSampleMillis, double ContactS, double TriggerS,
    IReadOnlyDictionary<string, Samples> Channels)
{
    /// <summary>Whether it holds forces of a plate.</summary>
    public bool HasForces => Channels.Keys.Any(name => name.EndsWith("_force_y", StringComparison.Ordinal));

    /// <summary>Whether it holds the vertical force of a plate.</summary>
    public bool HasPlate(string plate) => Channels.ContainsKey(VerticalOf(plate));

    /// <summary>Times of a plate's samples with a moment of the recording as zero.</summary>
    public TimeAxis ForceAxis(string plate, double zeroS) => Channels[VerticalOf(plate)].Axis(zeroS);

    private static string VerticalOf(string plate) => Domain.Curves.Channels.OfPlate(plate, "force", 'y');

    /// <summary>Whether it holds the club head or the grip.</summary>
    public bool HasClub => Has("club_head") || Has("grip");

    /// <summary>Whether a landmark was followed.</summary>
    public bool Has(string landmark) => Channels.ContainsKey(landmark + "_y");

    /// <summary>A landmark over time, with the moment of impact as zero; null when it was not followed.</summary>
    public Trajectory? Point(string landmark, double impactS) =>
        Channels.TryGetValue(landmark + "_x", out var x) && Channels.TryGetValue(landmark + "_y", out var y) && Channels.TryGetValue(landmark + "_z", out var z)
            ? new Trajectory(x.Values, y.Values, z.Values, x.Axis(impactS))
            : null;
}
