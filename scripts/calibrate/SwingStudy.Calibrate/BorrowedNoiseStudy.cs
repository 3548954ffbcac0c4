using System.Globalization;
using System.Text;
using SwingStudy.Statistics.Change;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.Calibrate;

/// <summary>Coverage and width of the honest change's 95 % interval where sessions are few and what is known of days comes from few other players.</summary>
/// <remarks>Width is the median half width over 1.96 standard errors of someone who knew all variances: 1 is as narrow as can be.</remarks>
internal static class BorrowedNoiseStudy
{
    private const double Change = 0.5;

    public static string Run(int replicates, ulong seed)
    {
        var settings = BorrowedNoise.Grid().ToArray();
        var rows = new string[settings.Length];
        Parallel.For(0, settings.Length, i => rows[i] = Row(settings[i], replicates, seed));
        var report = new StringBuilder();
        report.AppendLine(CultureInfo.InvariantCulture, $"Days known from few other players, two sessions each: honest change, coverage in percent and width, {replicates} replicates a row.");
        report.AppendLine();
        report.AppendLine("| sessions before | sessions after | swings | other players | their swings | session SD / swing SD | covered | width |");
        report.AppendLine("|---|---|---|---|---|---|---|---|");
        foreach (var row in rows)
            report.AppendLine(row);
        return report.ToString();
    }

    private static string Row(BorrowedNoise setting, int replicates, ulong seed)
    {
        var player = new Player(new Xoshiro256(seed).Split(setting.ToString()));
        Setting Sessions(int sessions, int swings) => new(sessions, swings, setting.SessionDeviation, 0);
        var tally = default(Tally);
        var widths = new List<double>(replicates);
        for (var r = 0; r < replicates; r++)
        {
            var data = new ChangeData(player.Phase(Sessions(setting.Before, setting.Swings), 0), player.Phase(Sessions(setting.After, setting.Swings), Change), 0);
            var sums = Enumerable.Range(0, setting.Pairs).Aggregate(NoiseSums.None, (sum, _) => sum + NoiseSums.OfPhase(player.Phase(Sessions(2, setting.OthersSwings), 0)));
            var estimate = HonestChangeRule.Judge(data, StudyNoise.Of(sums)).Estimate;
            tally.Covers(estimate, Change);
            if (estimate.Interval is { } interval)
                widths.Add(interval.HalfWidth / (1.959964 * setting.StandardError));
        }

        widths.Sort();
        var width = widths.Count > 0 ? widths[widths.Count / 2].ToString("F2", CultureInfo.InvariantCulture) : "-";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {setting.Before} | {setting.After} | {setting.Swings} | {setting.Pairs} | {setting.OthersSwings} | {setting.SessionDeviation} | {tally.Percent?.ToString("F1", CultureInfo.InvariantCulture) ?? "-"} | {width} |");
    }
}
