namespace SwingStudy.App.Demo.Model;

/// <summary>Values of a swing before any device measured it, under the names of the dictionary, computed from the model.</summary>
internal static class SwingTruth
{
    private const double Step = 0.0005;

    /// <summary>Truth of a swing.</summary>
    public static IReadOnlyDictionary<string, double> Of(SwingModel swing)
    {
        var grip = Greatest(swing.HandSpeed, swing.Top, 0);
        var vertical = Greatest(swing.VerticalForce, swing.Top, 0);
        var unweighting = Greatest(time => -swing.VerticalForce(time), swing.Top - 0.2, vertical.Time);
        var lowest = Greatest(time => -swing.PelvisHeight(time), swing.Top - 0.2, 0);
        var pivot = Greatest(swing.PivotMoment, swing.Top, 0);
        var target = Greatest(swing.TargetForce, swing.Top - 0.2, 0);
        var (atTop, atPeak) = (swing.ForearmShaftAngle(swing.Top), swing.ForearmShaftAngle(grip.Time));
        return new SortedDictionary<string, double>(StringComparer.Ordinal)
        {
            ["club_head_speed"] = swing.ClubHeadSpeed,
            ["body_weight"] = swing.BodyWeight,
            ["backswing_time"] = swing.Top - swing.Start,
            ["downswing_time"] = -swing.Top,
            ["grip_speed_peak"] = grip.Value,
            ["grip_speed_peak_before_impact"] = -1000 * grip.Time,
            ["forearm_shaft_top"] = atTop,
            ["forearm_shaft_grip_peak"] = atPeak,
            ["forearm_shaft_impact"] = swing.ForearmShaftAngle(0),
            ["angle_lost_before_grip_peak"] = atPeak - atTop,
            ["vertical_peak_total"] = vertical.Value,
            ["vertical_peak_total_time"] = 1000 * vertical.Time,
            ["unweight_min_total"] = -unweighting.Value,
            ["unweight_min_time"] = 1000 * unweighting.Time,
            ["target_peak_total"] = target.Value,
            ["target_peak_total_time"] = 1000 * target.Time,
            ["pivot_moment_peak"] = pivot.Value,
            ["pivot_moment_peak_time"] = 1000 * pivot.Time,
            ["pelvis_drop"] = 1000 * (-lowest.Value - swing.PelvisHeight(swing.Start)),
            ["pelvis_rise"] = 1000 * (swing.PelvisHeight(0) + lowest.Value),
            ["pelvis_low_time"] = 1000 * lowest.Time,
            ["trail_knee_flexion_address"] = swing.TrailKneeFlexion(swing.Start),
            ["trail_knee_flexion_top"] = swing.TrailKneeFlexion(swing.Top),
            ["trail_knee_flexion_impact"] = swing.TrailKneeFlexion(0),
        };
    }

    /// <summary>Greatest value of a smooth course within a span, and its time: the best sample, made finer by the parabola through it and its neighbours.</summary>
    private static (double Time, double Value) Greatest(Func<double, double> course, double from, double to)
    {
        var (best, value) = (from, double.NegativeInfinity);
        for (var time = from; time <= to; time += Step)
        {
            var here = course(time);
            if (here > value)
                (best, value) = (time, here);
        }

        if (best <= from || best + Step >= to)
            return (best, value);
        var (before, after) = (course(best - Step), course(best + Step));
        var bend = before - (2 * value) + after;
        var shift = bend < 0 ? 0.5 * (before - after) / bend : 0;
        return (best + (shift * Step), value - (0.25 * (before - after) * shift));
    }
}
