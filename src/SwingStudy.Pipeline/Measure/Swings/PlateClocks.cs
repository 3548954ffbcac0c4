using System.Globalization;
using SwingStudy.Pipeline.Measure.Recordings;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>The clocks of plates that record apart from each other, seen over the swings of a session.</summary>
/// <remarks>
/// Contact as each recording tells it joins them. Where both devices also tell when they began to record, the same two clocks run through all swings: a
/// swing whose contacts stand apart from what these clocks say has a trigger that is not contact, and nothing tells which of the two it is.
/// </remarks>
internal sealed class PlateClocks
{
    /// <summary>Contacts further from their clocks than this are not joined.</summary>
    private const double MostApartMillis = 10;

    private readonly Dictionary<(string, string), ContactClock?> _clocks;

    /// <summary>Looks at the plates of all swings of a session.</summary>
    public PlateClocks(IEnumerable<SwingPlates?> swings) => _clocks = swings.OfType<SwingPlates>().Where(IsApart)
        .GroupBy(Devices).ToDictionary(group => group.Key, group => ContactClock.Of([.. group.Select(Contacts).Where(pair => !double.IsNaN(pair.Item1 + pair.Item2))]));

    /// <summary>Why the plates of a swing cannot be joined; null when nothing speaks against it.</summary>
    public string? Fault(SwingPlates swing)
    {
        if (!IsApart(swing) || _clocks.GetValueOrDefault(Devices(swing)) is not { } clock)
            return null;
        var (first, second) = Contacts(swing);
        var apart = second - clock.Map(first);
        return Math.Abs(apart) > MostApartMillis
            ? string.Create(CultureInfo.InvariantCulture,
                $"the plates cannot be joined: contact in the recordings of {swing.Plates[0].Recording.Source} and {swing.Plates[1].Recording.Source} is {Math.Abs(apart):0} ms further apart than their clocks over {clock.Swings} swings say, so one of the triggers is not contact")
            : null;
    }

    /// <summary>A moment on the clock of the lead plate's device, on that of the trail plate's; NaN when swings do not tell.</summary>
    public double ToTrail(string leadDevice, string trailDevice, double leadMillis) =>
        _clocks.GetValueOrDefault((leadDevice, trailDevice)) is { } clock ? clock.Map(leadMillis) : leadDevice == trailDevice ? leadMillis : double.NaN;

    private static bool IsApart(SwingPlates swing) => swing.Recordings.Count == 2;

    private static (string, string) Devices(SwingPlates swing) => (swing.Plates[0].Recording.Device, swing.Plates[1].Recording.Device);

    private static (double, double) Contacts(SwingPlates swing) => (swing.Plates[0].ContactMillis, swing.Plates[1].ContactMillis);
}
