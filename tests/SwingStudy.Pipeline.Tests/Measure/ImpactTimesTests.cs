using SwingStudy.Domain.Curves;
using SwingStudy.Motion.Events;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Tests.Support;
using SwingStudy.Pipeline.Measure.Recordings;

namespace SwingStudy.Pipeline.Tests.Measure;

/// <summary>Sessions whose contact is up to a frame less than 1.6 s after the first sample of markers, and 1.3 s after that of plates whose clock is 7 s ahead and 50 millionths fast.</summary>
public sealed class ImpactTimesTests
{
    private const double MarkersBeforeS = 1.6;
    private const double RateHz = 240;
    private const double PlatesBeforeS = 1.3;
    private const double PlatesAheadMillis = 7000;
    private const double Fast = 50e-6;

    private static readonly ILookup<string, StayClock> NoClocks = Array.Empty<StayClock>().ToLookup(_ => "");

    /// <summary>The reference and the plates against it: t_reference = t_device − 7 s − drift · t_device.</summary>
    private static readonly ILookup<string, StayClock> Clocks = new[]
    {
        ("markers", new StayClock(0, 600_000, 0, 0, 40, "markers")), ("plates", new StayClock(PlatesAheadMillis, 600_000, -PlatesAheadMillis / 1000, -Fast / (1 + Fast), 40, "markers")),
    }.ToLookup(clock => clock.Item1, clock => clock.Item2);

    [Theory]
    [InlineData(Heard.Mark, 0.2, "contact marked by the device and break in the shaft's turn, weighed with the place of the ball in 10 swings")]
    [InlineData(Heard.Mark, 0, "contact marked by the device, weighed with the place of the ball in 10 swings")]
    [InlineData(Heard.Sound, 0.2, "sound of contact and break in the shaft's turn, weighed with the place of the ball in 10 swings")]
    [InlineData(Heard.Nothing, 0.2, "break in the shaft's turn, weighed with the place of the ball in 10 swings")]
    public void MarkersTellContactByAllThatTheSessionShows(Heard heard, double lost, string method)
    {
        var swings = Session(10, heard, lost);
        var impacts = new ImpactTimes(swings, NoClocks, new EventLimits());
        Assert.All(swings, swing => Assert.StartsWith(method, impacts.Of(swing[0], swing)!.Method, StringComparison.Ordinal));
        // Marks err by 0.5 ms, breaks by 0.1 to 0.2 ms.
        Assert.InRange(Rms(swings, impacts), 0, lost > 0 ? 0.00015 : 0.0004);
    }

    [Fact]
    public void MarksOnWholeFramesAreTakenForNoBetterThanAFrame()
    {
        var swings = Session(12, Heard.Frame, 0);
        var impacts = new ImpactTimes(swings, NoClocks, new EventLimits());
        // A frame of 240 Hz scatters by 1.2 ms; the place of twelve swings by 0.35 ms.
        Assert.InRange(Rms(swings, impacts), 0, 0.0006);
    }

    [Fact]
    public void APracticeSwingPassesTheBallsPlaceAndServesThePlatesToo()
    {
        var swings = Session(10, Heard.Mark, 0.2).ToList();
        swings[3] = Swing(3, Heard.Nothing, 0);
        var impacts = new ImpactTimes(swings, Clocks, new EventLimits());
        var markers = impacts.Of(swings[3][0], swings[3])!;
        Assert.StartsWith("club head passes the place of the ball in 9 swings", markers.Method, StringComparison.Ordinal);
        Assert.Equal(ContactS(3), markers.TimeS, 0.0003);
        Assert.Equal(0.8, markers.Confidence);
        Assert.Equal(PlatesBeforeS, impacts.Of(swings[3][1], swings[3])!.TimeS, 0.0005);
    }

    [Fact]
    public void TheClocksOfTheStayTellContactOnThePlates()
    {
        var swings = Session(10, Heard.Mark, 0.2);
        var impacts = new ImpactTimes(swings, Clocks, new EventLimits());
        Assert.All(swings, swing =>
        {
            var impact = impacts.Of(swing[1], swing)!;
            Assert.Equal("contact of markers on this device's clock, from the 40 swings of its stay", impact.Method);
            Assert.Equal(PlatesBeforeS, impact.TimeS, 0.0005);
        });
    }

    [Fact]
    public void ThoseThatTheSessionsTriggersSpeakAgainstDoNot()
    {
        var swings = Session(10, Heard.Mark, 0.2);
        var wrong = Clocks.SelectMany(group => group.Select(clock => (group.Key, clock))).ToLookup(
            own => own.Key, own => own.Key == "plates" ? own.clock with { OffsetSeconds = own.clock.OffsetSeconds + 0.2 } : own.clock);
        foreach (var clocks in new[] { wrong, NoClocks })
        {
            var impacts = new ImpactTimes(swings, clocks, new EventLimits());
            Assert.All(swings, swing =>
            {
                var impact = impacts.Of(swing[1], swing)!;
                Assert.StartsWith("contact of markers on this device's clock, from 9 swings, standard error", impact.Method, StringComparison.Ordinal);
                // Ten triggers that waver by 3 ms, one of them late.
                Assert.Equal(PlatesBeforeS, impact.TimeS, 0.005);
            });
        }
    }

    [Fact]
    public void PlatesAloneHaveTheirTrigger()
    {
        var swing = Session(10, Heard.Mark, 0.2)[4];
        var impact = new ImpactTimes([[swing[1]]], Clocks, new EventLimits()).Of(swing[1], [swing[1]])!;
        Assert.Equal((swing[1].TriggerS, "trigger of the device"), (impact.TimeS, impact.Method));
    }

    /// <summary>How a recording of markers tells contact.</summary>
    public enum Heard
    {
        Nothing,
        Mark,
        Frame,
        Sound,
    }

    /// <summary>Contact from the first sample of a recording of markers, anywhere between frames.</summary>
    private static double ContactS(int swing) => MarkersBeforeS - (swing * 0.618 % 1 / RateHz);

    private static double Rms(IReadOnlyList<IReadOnlyList<Recording>> swings, ImpactTimes impacts) =>
        Math.Sqrt(swings.Select((swing, i) => Math.Pow(impacts.Of(swing[0], swing)!.TimeS - ContactS(i), 2)).Average());

    private static IReadOnlyList<IReadOnlyList<Recording>> Session(int count, Heard heard, double lost) => [.. Enumerable.Range(0, count).Select(i => Swing(i, heard, lost))];

    private static IReadOnlyList<Recording> Swing(int i, Heard heard, double lost)
    {
        const double SoundHz = 2000;
        var noise = new Noise(40 + i);
        var at = ContactS(i);
        var contact = 1000.0 * 57 * (i + 1);
        var movement = new InventedSwing { LostAtImpact = lost };
        var channels = new Dictionary<string, Samples>(StringComparer.Ordinal);
        foreach (var (name, place, seed) in new[] { ("club_head", (Func<double, Vector3D>)movement.Head, 1), ("grip", movement.Grip, 2) })
        {
            var seen = InventedSwing.Seen(place, RateHz, 0.0003, (10 * i) + seed, -at, 1);
            (channels[name + "_x"], channels[name + "_y"], channels[name + "_z"]) = (new Samples(seen.X, RateHz), new Samples(seen.Y, RateHz), new Samples(seen.Z, RateHz));
        }

        if (heard == Heard.Sound)
        {
            double[] sound = [.. Enumerable.Range(0, 5000).Select(k => (0.01 * Math.Sin(k)) + (k / SoundHz >= at && k / SoundHz < at + 0.01 ? 1 : 0))];
            channels[Channels.Sound] = new Samples(sound, SoundHz);
        }

        var marked = heard switch
        {
            Heard.Mark => at + (0.0005 * noise.Next()),
            Heard.Frame => Math.Round(at * RateHz) / RateHz,
            _ => double.NaN,
        };
        var markers = new Recording($"markers-{i}", "markers", "markers", "swing", contact - (1000 * at), marked, double.NaN, channels);
        var onPlates = (contact * (1 + Fast)) + PlatesAheadMillis;
        var trigger = PlatesBeforeS + (0.003 * noise.Next()) + (i == 2 ? 0.3 : 0);
        var forces = new Dictionary<string, Samples>(StringComparer.Ordinal) { ["lead_force_y"] = new Samples(new double[1000], 500) };
        return [markers, new Recording($"plates-{i}", "plates", "plates", "swing", onPlates - (1000 * PlatesBeforeS), double.NaN, trigger, forces)];
    }
}
