using SwingStudy.Domain.Tables;
using SwingStudy.Motion.Geometry;
using SwingStudy.Pipeline.Measure.Curves;

namespace SwingStudy.Pipeline.Measure.Swings;

/// <summary>Processed curves of a swing as rows of <c>swing_curves</c>, impact being zero.</summary>
internal static class CurveRows
{
    /// <summary>Adds the curves of one swing.</summary>
    public static void Add(RowSetBuilder rows, string participant, SwingSignals swing)
    {
        if (swing.Forces is { } forces)
            AddForces(rows, participant, swing, forces);
        if (swing.Motion is { } motion)
            AddMotion(rows, participant, swing, motion);
    }

    private static void AddForces(RowSetBuilder rows, string participant, SwingSignals swing, ForceSwing forces)
    {
        var weight = forces.BodyWeightN;
        var side = swing.Side ?? double.NaN;
        var method = MeasureMethods.Forces(swing);
        foreach (var (name, feet) in new[] { ("total", forces.Total), ("lead", forces.Lead), ("trail", forces.Trail) })
        {
            if (feet is not { } reaction)
                continue;
            Curve($"{name}_force_y", "{BW}", reaction.ForceY, 1 / weight);
            Curve($"{name}_force_x", "{BW}", reaction.ForceX, 1 / weight);
            Curve($"{name}_force_toe", "{BW}", reaction.ForceZ, side / weight);
            Curve(name == "total" ? "pivot_moment" : $"{name}_free_moment", "N.m", reaction.VerticalMoment, side);
        }

        if (forces is { Lead: { } lead, Trail: { } trail })
            Curve("total_free_moment", "N.m", [.. lead.VerticalMoment.Zip(trail.VerticalMoment, (a, b) => a + b)], side);
        if (forces.LeadShare is { } share)
            Curve("lead_share", "%", share, 1);
        if (forces.Total is { } total)
        {
            Curve("cop_along", "mm", total.CentreX, 1000);
            Curve("cop_toe", "mm", total.CentreZ, 1000 * side);
        }

        void Curve(string channel, string unit, double[] values, double factor) => Put(rows, participant, swing.Swing, channel, unit, values, factor, forces.Axis, method);
    }

    private static void AddMotion(RowSetBuilder rows, string participant, SwingSignals swing, MarkerSwing motion)
    {
        var method = MeasureMethods.Motion(swing);
        Curve("grip_speed", "m/s", motion.Fit("grip")?.Velocity.Lengths(), 1);
        Curve("club_head_speed", "m/s", motion.Club?.HeadSpeed, 1);
        if (ForearmShaft.Landmarks.All(mark => motion.Raw(mark) is not null))
            Curve("forearm_shaft_angle", "deg", ForearmShaft.Curve(motion), 1);
        Curve("pelvis_height", "mm", motion.Pelvis?.Y, 1000);
        Curve("pelvis_along", "mm", motion.Pelvis?.X, 1000);
        if (double.IsNaN(swing.AddressToS) || swing.Side is null)
            return;
        var (pelvis, trunk) = (motion.PelvisTurn(swing.AddressFromS, swing.AddressToS), motion.TrunkTurn(swing.AddressFromS, swing.AddressToS));
        Curve("pelvis_turn", "deg", pelvis, 1);
        Curve("trunk_turn", "deg", trunk, 1);
        if (pelvis is not null && trunk is not null)
            Curve("separation", "deg", [.. trunk.Zip(pelvis, (a, b) => a - b)], 1);

        void Curve(string channel, string unit, double[]? values, double factor)
        {
            if (values is not null)
                Put(rows, participant, swing.Swing, channel, unit, values, factor, motion.Axis, method);
        }
    }

    /// <summary>A curve without any value is left out: what is missing throughout is told in the measures.</summary>
    private static void Put(RowSetBuilder rows, string participant, string swing, string channel, string unit, double[] values, double factor, TimeAxis axis, string method)
    {
        double[] scaled = [.. values.Select(value => value * factor)];
        if (scaled.All(double.IsNaN))
            return;
        rows.Add(("swing_id", swing), ("participant", participant), ("channel", channel), ("unit", unit), ("sample_rate_hz", axis.SampleRateHz),
            ("t0_s", axis.FirstTimeS), ("values", scaled), ("method", method));
    }
}
