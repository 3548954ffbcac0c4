using System.Globalization;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Laboratories;

/// <summary>Holds what a study measured on marks against what the player did.</summary>
internal static class MarkerTruth
{
    /// <summary>1 % of club speed, one sample of time, one degree.</summary>
    public static void Holds(LaboratoryStudy study, InventedSwing movement, double rateHz, int swings)
    {
        Near("club_head_speed", InventedSwing.Speed(movement.Head, 0), 0.01 * InventedSwing.Speed(movement.Head, 0));
        Near("grip_speed_peak", InventedSwing.Greatest(t => InventedSwing.Speed(movement.Grip, t), movement.TopS, -0.001).Value, 0.15);
        Near("t_top", movement.TopS, 1 / rateHz);
        Near("pelvis_turn_top", movement.PelvisTurn(movement.TopS), 1);
        Near("trail_knee_flexion_top", movement.KneeDegrees(movement.TopS), 1);
        Near("pelvis_drop", -40, 1.5);

        void Near(string variable, double expected, double tolerance)
        {
            var values = study.Measures(variable);
            Assert.Equal(swings, values.Count);
            Assert.All(values, value => Assert.True(Math.Abs(value - expected) <= tolerance, string.Create(CultureInfo.InvariantCulture, $"{variable}: expected {expected}, got {value}: {study.Reason(variable)}")));
        }
    }
}
