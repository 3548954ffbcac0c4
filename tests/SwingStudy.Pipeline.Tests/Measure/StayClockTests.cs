using NodaTime;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Measure.Recordings;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Measure;

/// <summary>Clocks as linking writes them: t_reference = t_device + offset + drift · (t_device − from).</summary>
public sealed class StayClockTests
{
    [Fact]
    public void AMomentGoesFromOneDeviceToAnotherThroughTheReference()
    {
        var clocks = Clocks(("markers", "reference", 0, 600, 0, 0), ("plates", "offset-and-drift", 10, 610, -10, -50));
        var moment = Millis(300);
        // The clock of the plates shows ten seconds more and, in 300 s at 50 millionths, 15 ms.
        var (found, clock) = StayClock.Map(clocks, "plates", "markers", moment)!.Value;
        Assert.Equal(moment + 10_000 + (50e-6 * 300_000), found, 0.01);
        Assert.Equal(9, clock.Matched);
        // And back.
        Assert.Equal(moment, StayClock.Map(clocks, "markers", "plates", found)!.Value.Millis, 1e-3);
    }

    [Fact]
    public void AClockThatWasSetAnewHoldsInItsStretchAlone()
    {
        var clocks = Clocks(("markers", "reference", 0, 6000, 0, 0), ("plates", "offset", 3, 600, -3, 0), ("plates", "offset", 3000, 6900, 1000, 0));
        Assert.Equal(Millis(103), StayClock.Map(clocks, "plates", "markers", Millis(100))!.Value.Millis, 1e-3);
        Assert.Equal(Millis(4000), StayClock.Map(clocks, "plates", "markers", Millis(5000))!.Value.Millis, 1e-3);
        // Between the two nobody knows which holds.
        Assert.Null(StayClock.Map(clocks, "plates", "markers", Millis(2100)));
    }

    [Fact]
    public void AClockThatWasNotMadeTellsNothing() =>
        Assert.Null(StayClock.Map(Clocks(("markers", "reference", 0, 600, 0, 0), ("plates", "not-made", 0, 600, 5, 0)), "plates", "markers", Millis(100)));

    private static double Millis(double seconds) => (Some.Morning + Duration.FromSeconds(seconds)).ToUnixTimeMilliseconds();

    private static ILookup<string, StayClock> Clocks(params (string Source, string Method, double From, double To, double Offset, double Ppm)[] rows)
    {
        var clocks = new RowSetBuilder(StudyTables.Clocks);
        foreach (var row in rows)
        {
            clocks.Add(
                ("participant", "P01"), ("session", "P01-20260907-1"), ("source", row.Source), ("device", row.Source), ("reference_source", "markers"), ("method", row.Method),
                ("from", Some.Morning + Duration.FromSeconds(row.From)), ("to", Some.Morning + Duration.FromSeconds(row.To)),
                ("offset_s", row.Offset), ("drift_ppm", row.Ppm), ("matched", 9L));
        }

        return StayClock.Of(clocks.Build());
    }
}
