using System.Globalization;

namespace SwingStudy.Pipeline.Tests.Laboratories;

/// <summary>Holds what a study measured against what the player did, sample by sample.</summary>
internal static class ForceTruth
{
    /// <summary>From well before the backswing to just after impact: beyond it the invented curves go on, and files end.</summary>
    private const double FromS = -1.0;
    private const double ToS = 0.2;

    /// <summary>3 mm of pressure, 1 % of the greatest force or moment.</summary>
    public static void Holds(LaboratoryStudy study, Stance stance, int swings, bool hasFeet = true, bool hasFreeMoment = true)
    {
        var side = stance.Side;
        Near(study, "cop_along", swings, time => 1000 * stance.Both(time).Along, 3);
        Near(study, "cop_toe", swings, time => 1000 * side * stance.Both(time).Across, 3);
        Near(study, "total_force_y", swings, time => (stance.Foot("lead", time).Force.Y + stance.Foot("trail", time).Force.Y) / Stance.WeightN, 0.016);
        Near(study, "total_force_x", swings, time => (stance.Foot("lead", time).Force.X + stance.Foot("trail", time).Force.X) / Stance.WeightN, 0.004);
        Near(study, "total_force_toe", swings, time => side * (stance.Foot("lead", time).Force.Z + stance.Foot("trail", time).Force.Z) / Stance.WeightN, 0.002);
        Assert.All(study.Measures("body_weight"), weight => Assert.Equal(Stance.WeightN, weight, 0.002 * Stance.WeightN));
        if (hasFreeMoment)
            Near(study, "pivot_moment", swings, time => side * stance.Both(time).Pivot, 0.01 * 60);
        if (!hasFeet)
            return;
        foreach (var (foot, greatest) in new[] { ("lead", 22), ("trail", 15.4) })
        {
            if (hasFreeMoment)
                Near(study, $"{foot}_free_moment", swings, time => side * stance.Foot(foot, time).FreeMoment, 0.01 * greatest);
            Near(study, $"{foot}_force_x", swings, time => stance.Foot(foot, time).Force.X / Stance.WeightN, 0.003);
        }
    }

    private static void Near(LaboratoryStudy study, string channel, int swings, Func<double, double> truth, double tolerance)
    {
        var curves = study.Curves(channel);
        Assert.Equal(swings, curves.Count);
        foreach (var (times, values) in curves)
        {
            var worst = times.Zip(values).Where(pair => pair.First is > FromS and < ToS).Select(pair => (Time: pair.First, Off: pair.Second - truth(pair.First)))
                .MaxBy(pair => double.IsNaN(pair.Off) ? double.PositiveInfinity : Math.Abs(pair.Off));
            Assert.True(Math.Abs(worst.Off) <= tolerance, string.Create(CultureInfo.InvariantCulture, $"{channel} is {worst.Off:0.####} off at {worst.Time:0.000} s, {tolerance:0.####} is allowed"));
        }
    }
}
