using System.Globalization;
using System.Text;
using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.EffectSizes;
using SwingStudy.Statistics.Group;
using SwingStudy.Statistics.Reliability;

namespace SwingStudy.Calibrate;

/// <summary>Coverage of 95 % intervals over known truths; 100 minus the figure is the error of the first kind of the test with it.</summary>
/// <remarks>
/// One player's change of 0.5 swing standard deviations; a study of 12 players for ICC and mixed model, players differing by 1.5, without a
/// change. What the study knows about noise comes from 10 other players.
/// </remarks>
internal static class CoverageStudy
{
    private const double Change = 0.5;
    private const double PlayerDeviation = 1.5;
    private const int Players = 12;
    private const int OtherPlayers = 10;
    private const int Methods = 7;

    public static string Run(int replicates, ulong seed)
    {
        var settings = Setting.Grid().ToArray();
        var rows = new string[settings.Length];
        Parallel.For(0, settings.Length, i => rows[i] = Row(settings[i], Simulate(settings[i], replicates, seed)));
        var error = Math.Sqrt(0.95 * 0.05 / replicates) * 100;
        var report = new StringBuilder();
        report.AppendLine(CultureInfo.InvariantCulture, $"Coverage of 95 % intervals in percent, {replicates} replicates a row, standard error {error:F1} at 95.");
        report.AppendLine();
        report.AppendLine("| sessions | swings | session SD / swing SD | lag-1 | plain t on swings | Hedges' g on swings | honest change, own sessions | honest change, with study | ICC(2,1) of session means | mixed model, Satterthwaite | mixed model, Kenward-Roger |");
        report.AppendLine("|---|---|---|---|---|---|---|---|---|---|---|");
        foreach (var row in rows)
            report.AppendLine(row);
        return report.ToString();
    }

    private static Tally[] Simulate(Setting setting, int replicates, ulong seed)
    {
        var player = new Player(new Xoshiro256(seed).Split(setting.ToString()));
        var tallies = new Tally[Methods];
        for (var r = 0; r < replicates; r++)
        {
            OnePlayer(setting, player, tallies);
            Study(setting, player, tallies);
        }

        return tallies;
    }

    private static void OnePlayer(Setting setting, Player player, Tally[] tallies)
    {
        var (before, after) = (player.Phase(setting, 0), player.Phase(setting, Change));
        var contrast = IndependentContrast.Of(before.SelectMany(s => s).ToArray(), after.SelectMany(s => s).ToArray());
        tallies[0].Covers(MeanDifference.Pooled(contrast), Change);
        tallies[1].Covers(HedgesG.Pooled(contrast), Change / Math.Sqrt(1 + (setting.SessionDeviation * setting.SessionDeviation)));
        var data = new ChangeData(before, after, 0);
        tallies[2].Covers(HonestChangeRule.Judge(data, StudyNoise.Unknown).Estimate, Change);
        var noise = StudyNoise.Of(Enumerable.Range(0, 2 * OtherPlayers).Aggregate(NoiseSums.None, (sums, _) => sums + NoiseSums.OfPhase(player.Phase(setting, 0))));
        tallies[3].Covers(HonestChangeRule.Judge(data, noise).Estimate, Change);
    }

    private static void Study(Setting setting, Player player, Tally[] tallies)
    {
        var (values, subjects, sessions, phases) = (new List<double>(), new List<int>(), new List<int>(), new List<double>());
        var means = new List<double>();
        for (var p = 0; p < Players; p++)
        {
            var level = PlayerDeviation * player.Normal();
            for (var phase = 0; phase < 2; phase++)
            {
                var drawn = player.Phase(setting, level);
                for (var s = 0; s < drawn.Length; s++)
                {
                    values.AddRange(drawn[s]);
                    subjects.AddRange(Enumerable.Repeat(p, drawn[s].Length));
                    sessions.AddRange(Enumerable.Repeat((phase * setting.Sessions) + s, drawn[s].Length));
                    phases.AddRange(Enumerable.Repeat((double)phase, drawn[s].Length));
                    means.Add(drawn[s].Average());
                }
            }
        }

        var swingPart = new SerialDependence(null, setting.Dependence).Inflation(setting.Swings) / setting.Swings;
        var between = PlayerDeviation * PlayerDeviation;
        var icc = between / (between + (setting.SessionDeviation * setting.SessionDeviation) + swingPart);
        tallies[4].Covers(IntraclassCorrelation.Icc21(TrialTable.Of(means.ToArray(), 2 * setting.Sessions)), icc);
        var data = MixedModelData.Of(
            values.ToArray(), [("intercept", [.. values.Select(_ => 1.0)]), ("phase", [.. phases])], subjects.ToArray(), sessions.ToArray());
        if (MixedModel.FitReml(data).Fit is not { } fit)
            return;
        tallies[5].Covers(fit.Satterthwaite([0, 1]), 0);
        tallies[6].Covers(fit.KenwardRoger([0, 1]), 0);
    }

    private static string Row(Setting setting, Tally[] tallies)
    {
        var cells = tallies.Select(t => t.Percent is { } percent ? percent.ToString("F1", CultureInfo.InvariantCulture) : "-");
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {setting.Sessions} | {setting.Swings} | {setting.SessionDeviation} | {setting.Dependence} | {string.Join(" | ", cells)} |");
    }
}
