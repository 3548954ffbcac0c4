using SwingStudy.App.Demo;
using SwingStudy.App.Demo.Model;
using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Kinematics;
using SwingStudy.Motion.Signals;

namespace SwingStudy.App.Tests.Demo;

/// <summary>Planted truth against what the formulas of measuring give on the model's own movement, sampled as the demo's devices do, without noise.</summary>
public class DemoMeasuredTests
{
    private const int Frames = 250;

    public static TheoryData<string, string> Swings => [.. DemoStudy.PlayersWithStarts.Where(player => player.Devices != MovementDevices.None)
        .SelectMany(player => new[] { (player.Code, DemoStudy.Baseline), (player.Code, DemoStudy.Cue) })];

    [Theory]
    [MemberData(nameof(Swings))]
    public void WhatIsPlantedIsWhatIsMeasured(string code, string phase)
    {
        var player = DemoStudy.PlayersWithStarts.Single(one => one.Code == code);
        var swing = new SwingModel(player.StyleIn(phase));
        var axis = new TimeAxis(MarkerExport.Rate, -1.25, Frames);
        Trajectory Mark(string name) => Of(axis, time => swing.Points(time)[Figurine.Names.ToList().IndexOf(name)]);
        MovingFit Fit(string name, double window, int degree) => MovingFit.Before(Mark(name), 0, window, degree);

        Near("club_head_speed", ClubAtImpact.Before(Mark("grip"), Mark("club_head"), 0)!.Velocity.Length, 0.2);
        var (grip, wrist, elbow, head) = (Fit("grip", 0.08, 3), Fit("lead_wrist", 0.08, 3), Fit("lead_elbow", 0.08, 3), Fit("club_head", 0.05, 5));
        var peak = Span.Highest(grip.Velocity.Lengths(), axis, swing.Top, 0)!.Value;
        double[] angle = [.. Enumerable.Range(0, Frames).Select(i => Angles.ForearmShaft(elbow.Place[i], wrist.Place[i], grip.Place[i], head.Place[i]))];
        Near("grip_speed_peak", peak.Value, 0.01);
        // The grip is fastest on a flat top, and the angle opens by 0.7 to 0.9 degrees a millisecond there.
        Near("grip_speed_peak_before_impact", -1000 * axis.TimeOf(peak.Position), 1);
        Near("forearm_shaft_top", Span.At(angle, axis, swing.Top), 0.1);
        Near("forearm_shaft_grip_peak", Span.At(angle, axis, axis.TimeOf(peak.Position)), 1);

        var plates = new TimeAxis(PlateStation.Rate, -1.3, 360);
        double[] vertical = new LowPass(50).Apply([.. Enumerable.Range(0, plates.Count).Select(i => swing.VerticalForce(plates.TimeOf(i)))], PlateStation.Rate);
        var push = Span.Highest(vertical, plates, swing.Top, 0)!.Value;
        Near("vertical_peak_total", push.Value, 0.002);
        Near("vertical_peak_total_time", 1000 * plates.TimeOf(push.Position), 0.5);

        void Near(string variable, double measured, double tolerance)
        {
            var planted = player.MeanIn(variable, phase);
            Assert.True(Math.Abs(measured - planted) <= tolerance, FormattableString.Invariant($"{variable}: planted {planted}, measured {measured}"));
        }
    }

    private static Trajectory Of(TimeAxis axis, Func<double, Point3> place)
    {
        var places = Enumerable.Range(0, axis.Count).Select(i => place(axis.TimeOf(i))).ToList();
        return new Trajectory([.. places.Select(p => p.X)], [.. places.Select(p => p.Y)], [.. places.Select(p => p.Z)], axis);
    }
}
