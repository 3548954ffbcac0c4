using SwingStudy.Domain.Sources;

namespace SwingStudy.Ingestion.Tests.Recordings;

/// <summary>Clocks that are no times from zero, and plates that give the centre of pressure.</summary>
public sealed class ClockAndPressureTests
{
    [Fact]
    public void ATimeOfDayTellsTheRateAndLostLines()
    {
        var rule = SomeRecording.Rule with { ClockKind = ClockKind.TimeOfDay };
        var recording = SomeRecording.One("Player: Ada\nStarted: 2025-10-07 11:05:40.350\nt;Fz\n11:05:40.350;1\n11:05:40.360;2\n11:05:40.380;4\n", SomeRecording.With(Newtons(rule)));
        Assert.Equal(100, recording.Curves[0].RateHz);
        Assert.Equal([1, 2, double.NaN, 4], SomeRecording.Values(recording, "lead_force_y"));
    }

    [Fact]
    public void FramesAreCountedAtTheStatedRate()
    {
        var rule = Newtons(SomeRecording.Rule) with { ClockKind = ClockKind.Frames, Rate = new FieldSource { Constant = "250" } };
        var recording = SomeRecording.One("Player: Ada\nStarted: 2025-10-07 11:05:40.350\nt;Fz\n1001;1\n1002;2\n1005;5\n", SomeRecording.With(rule));
        Assert.Equal(250, recording.Curves[0].RateHz);
        Assert.Equal([1, 2, double.NaN, double.NaN, 5], SomeRecording.Values(recording, "lead_force_y"));
    }

    /// <summary>r × F with r = (0.1, 0, -0.05) m and F = (0, 700, 0) N is (35, 0, 70) N.m; a device whose z points up gives the place as (100, 50) mm.</summary>
    [Fact]
    public void ACentreOfPressureBecomesTheMomentsThatTheVerticalForceHasThere()
    {
        var rule = SomeRecording.Rule with
        {
            Axes = AxisMap.Of("x", "z", "-y")!,
            Channels = new Dictionary<string, FieldSource>
            {
                ["lead_force_z"] = new() { Column = "Fz", Unit = "N" }, ["lead_cop_x"] = new() { Column = "X", Unit = "mm" }, ["lead_cop_y"] = new() { Column = "Y", Unit = "mm" },
            },
            Clock = new FieldSource { Column = "t", Unit = "s" },
        };
        var recording = SomeRecording.One("Player: Ada\nStarted: 2025-10-07 11:05:40.350\nt;Fz;X;Y\n0;700;100;50\n0.01;700;100;50\n", SomeRecording.With(rule));
        Assert.Equal(["lead_force_y", "lead_moment_x", "lead_moment_z"], recording.Curves.Select(curve => curve.Channel).Order(StringComparer.Ordinal));
        Assert.Equal(35, SomeRecording.Values(recording, "lead_moment_x")[0], 9);
        Assert.Equal(70, SomeRecording.Values(recording, "lead_moment_z")[0], 9);
    }

    private static RecordingRule Newtons(RecordingRule rule) => rule with { Channels = new Dictionary<string, FieldSource> { ["lead_force_y"] = new() { Column = "Fz", Unit = "N" } } };
}
