using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Planning;

namespace SwingStudy.Statistics.Tests.Reference;

internal static class PlanningCases
{
    public static IReadOnlyList<CaseKind> Kinds { get; } =
    [
        new("power of the paired t test", c => c.Expects("power_closed_form"), PairedPower),
        new("players for an interval of an ICC", c => c.Expects("n_by_f_interval"), IccWidth),
        new("simulated interval of an ICC", c => c.Expects("coverage_simulated"), IccSimulation),
    ];

    private static Dictionary<string, object?> PairedPower(ReferenceCase c)
    {
        double change = c.Number("d_z"), alpha = c.Number("alpha");
        int pairs = c.Integer("n"), replications = c.Integer("replications");
        var closed = PowerClosedForm.PairedT(change, pairs, alpha);
        var error = Math.Sqrt(closed * (1 - closed) / replications);

        // A difference of unit standard deviation: all of it between players.
        var noise = new NoiseModel { ChangeBetweenPlayers = 1, Session = 0, Swing = 0 };
        var size = new StudySize { Players = pairs, Sessions = 1, Swings = 1 };
        var simulated = PrePostPower.Simulate(noise, size, change, new Xoshiro256(20260101), replications, alpha, threads: 2)!;
        Assert.InRange(simulated.Power, closed - (4 * error), closed + (4 * error));
        return new()
        {
            ["power_closed_form"] = closed,
            ["mc_se_at_replications"] = error,
            ["r_simulation_estimate"] = simulated.Power,
        };
    }

    private static Dictionary<string, object?> IccWidth(ReferenceCase c)
    {
        double icc = c.Number("icc"), confidence = c.Number("confidence");
        var k = c.Integer("k");
        var plan = IccPlan.ForWidth(icc, k, c.Number("width"), confidence);
        var interval = IccPlan.ExactInterval(icc, plan.PlayersPairCorrected, k, confidence);
        return new()
        {
            ["n_formula_raw"] = plan.Raw,
            ["n_formula"] = plan.Players,
            ["n_with_k2_correction"] = plan.PlayersPairCorrected,
            ["width_f_interval_at_n"] = interval.High - interval.Low,
            ["n_by_f_interval"] = plan.PlayersByExactInterval,
        };
    }

    private static Dictionary<string, object?> IccSimulation(ReferenceCase c)
    {
        const double Confidence = 0.95;
        var simulated = IccPlan.Simulate(
            c.Number("icc"), c.Integer("n"), c.Integer("k"), c.Integer("replications"), new Xoshiro256(20260101), Confidence, threads: 2);
        return new()
        {
            ["mean_width"] = simulated.MeanWidth,
            ["mean_width_mc_se"] = simulated.MeanWidthError,
            ["coverage_exact"] = Confidence,
            ["coverage_simulated"] = simulated.Coverage,
        };
    }
}
