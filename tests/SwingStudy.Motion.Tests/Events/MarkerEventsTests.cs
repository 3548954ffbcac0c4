using SwingStudy.Motion.Events;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Motion.Tests.Events;

public class MarkerEventsTests
{
    private static readonly EventLimits Limits = new();

    [Theory]
    [InlineData(100, 0.0002)]
    [InlineData(100, 0.002)]
    [InlineData(240, 0.0003)]
    [InlineData(240, 0.002)]
    [InlineData(1000, 0.0002)]
    [InlineData(1000, 0.002)]
    public void EventsAreFoundAtAnyRateAndNoise(double rate, double noise)
    {
        for (var seed = 1; seed <= 8; seed++)
        {
            var swing = new InventedSwing { TopS = -0.25 - (0.01 * seed), TransitionS = -0.33 };
            var events = Find(swing, rate, noise, seed);
            Assert.Equal(swing.TopS, events.TimeOf(EventNames.Top), Math.Max(0.008, 1 / rate));
            // The start is where the speed first lasts above 0.1 m/s, which is after the first movement.
            Assert.Equal(Moved(swing), events.TimeOf(EventNames.Start), 0.05);
            Assert.Equal(swing.TransitionS, events.TimeOf(EventNames.Transition), 0.02);
            Assert.True(events.TimeOf(EventNames.Finish) > 0.2);
            Assert.Empty(events.Failed);
        }
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(1)]
    public void NeitherPlaceNorHandChangesTimes(int side)
    {
        var usual = Find(new InventedSwing(), 240, 0.0005, 4);
        var other = Find(new InventedSwing { Side = side, Place = new Vector3D(3, 0.2, -7) }, 240, 0.0005, 4);
        foreach (var name in new[] { EventNames.Start, EventNames.Top, EventNames.Finish })
            Assert.Equal(usual.TimeOf(name), other.TimeOf(name), 0.004);
    }

    [Fact]
    public void TimesDoNotDependOnTheRate()
    {
        EventSet slow = Find(new InventedSwing(), 120, 0, 1), fast = Find(new InventedSwing(), 1000, 0, 1);
        Assert.Equal(fast.TimeOf(EventNames.Top), slow.TimeOf(EventNames.Top), 0.004);
        Assert.Equal(fast.TimeOf(EventNames.Start), slow.TimeOf(EventNames.Start), 0.02);
    }

    [Fact]
    public void WaggleBeforeTheSwingIsNoStart()
    {
        var swing = new InventedSwing();
        var seen = InventedSwing.Seen(t => swing.Head(t) + (t < -1.3 ? new Vector3D(0.1 * Math.Sin(12 * t), 0, 0) : default), 240, 0.0005, fromS: -3);
        Assert.Equal(Moved(swing), MarkerEvents.Find(seen, "club head", null, 0, Limits).TimeOf(EventNames.Start), 0.05);
    }

    [Fact]
    public void ARecordingThatBeginsInTheBackswingHasNoStartAndNoTop()
    {
        var swing = new InventedSwing();
        var events = MarkerEvents.Find(InventedSwing.Seen(swing.Head, 240, 0.0003, fromS: -0.7), "club head", null, 0, Limits);
        Assert.True(double.IsNaN(events.TimeOf(EventNames.Start)));
        Assert.Contains("still", events.ReasonOf(EventNames.Start), StringComparison.Ordinal);
        Assert.NotNull(events.ReasonOf(EventNames.Top));
    }

    [Theory]
    [InlineData(240, 0.0003)]
    [InlineData(1000, 0.001)]
    public void ImpactOfAPracticeSwingIsWhereTheHeadPassesItsPlace(double rate, double noise)
    {
        // The head passes its place at address 0.08 m before the end of the arm's movement to impact.
        var swing = new InventedSwing { LostAtImpact = 0 };
        var impact = ImpactSearch.FromHead(InventedSwing.Seen(swing.Head, rate, noise), Limits)!;
        Assert.Equal("club head passes its place at address", impact.Method);
        Assert.Equal(0, impact.TimeS, 0.004);
    }

    [Fact]
    public void ImpactOfABallIsWhereTheSpeedCollapses()
    {
        var impact = ImpactSearch.FromHead(InventedSwing.Seen(new InventedSwing().Head, 500, 0.0003), Limits)!;
        Assert.Equal("club head before its speed collapses", impact.Method);
        Assert.Equal(0, impact.TimeS, 0.003);
    }

    [Fact]
    public void SoundTellsImpactAndSilenceDoesNot()
    {
        var noise = new Noise(5);
        var axis = new TimeAxis(960, -1, 1500);
        double[] quiet = [.. Enumerable.Range(0, 1500).Select(_ => 0.01 * noise.Next())];
        double[] click = [.. quiet.Select((x, i) => x + (i >= 960 ? 2 * Math.Exp(-(i - 960) / 8.0) * Math.Cos(i) : 0))];
        Assert.Equal(0, ImpactSearch.FromSound(click, axis)!.TimeS, 0.0011);
        Assert.Null(ImpactSearch.FromSound(quiet, axis));
    }

    [Fact]
    public void EventsOutOfOrderFailAndNoneIsMoved()
    {
        var set = new EventSet([new(EventNames.Start, -0.2, "", 0.4), new(EventNames.Top, -0.3, "", 0.9), new(EventNames.Impact, 0, "", 0.9)], []).Ordered();
        Assert.Equal([EventNames.Top, EventNames.Impact], set.Found.Select(e => e.Name));
        Assert.Contains("-200.0 ms", set.ReasonOf(EventNames.Start), StringComparison.Ordinal);
        var late = new EventSet([new(EventNames.Impact, 0, "", 0.1), new(EventNames.GripPeak, 0.01, "", 0.9)], []).Ordered();
        Assert.Equal([EventNames.Impact], late.Found.Select(e => e.Name));
    }

    private static EventSet Find(InventedSwing swing, double rate, double noise, int seed)
    {
        var head = InventedSwing.Seen(swing.Head, rate, noise, seed, phaseS: 0.3 / rate);
        double[] turn = [.. Enumerable.Range(0, head.Count).Select(i => swing.PelvisTurn(head.Axis.TimeOf(i)))];
        return MarkerEvents.Find(head, "club head", turn, 0, Limits).Ordered();
    }

    private static double Moved(InventedSwing swing) =>
        Enumerable.Range(0, 8000).Select(i => swing.StartS + (i * 1e-4)).First(t => InventedSwing.Speed(swing.Head, t) > 0.1);
}
