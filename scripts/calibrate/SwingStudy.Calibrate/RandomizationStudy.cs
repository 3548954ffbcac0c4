using System.Globalization;
using System.Text;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Resampling;

namespace SwingStudy.Calibrate;

/// <summary>How often randomization tests reject although nothing changed.</summary>
/// <remarks>
/// Two designs: the order of 2 m sessions is drawn among all with m of each condition, and tests session means; or the swing at which the condition
/// changes is drawn among those with at least k swings before and after, and tests swings. A test can only be held to a level that its assignments
/// allow: the largest of them up to 5 %, else the smallest there is.
/// </remarks>
internal static class RandomizationStudy
{
    private const double Wanted = 0.05;

    public static string Run(int replicates, ulong seed)
    {
        var settings = Setting.Grid().Where(setting => setting.Sessions > 1).ToArray();
        var rows = new string[settings.Length];
        Parallel.For(0, settings.Length, i => rows[i] = Row(settings[i], replicates, seed));
        var report = new StringBuilder();
        report.AppendLine(CultureInfo.InvariantCulture, $"Randomization tests without a change: rejections in percent, {replicates} replicates a row.");
        report.AppendLine();
        report.AppendLine("| sessions | swings | session SD / swing SD | lag-1 | order drawn: level | order drawn: rejected | start drawn: level | start drawn: rejected |");
        report.AppendLine("|---|---|---|---|---|---|---|---|");
        foreach (var row in rows)
            report.AppendLine(row);
        return report.ToString();
    }

    private static string Row(Setting setting, int replicates, ulong seed)
    {
        var chance = new Xoshiro256(seed).Split($"randomization {setting}");
        var player = new Player(chance.Split("player"));
        var draws = chance.Split("draws");
        var occasions = 2 * setting.Sessions;
        var order = new AlternatingScheme(setting.Sessions, setting.Sessions, setting.Sessions);
        var start = PhaseStartScheme.WithAtLeast(occasions * setting.Swings, setting.Swings);
        var (orderLevel, startLevel) = (Level(order.Count, 2), Level(start.Count, 1));
        int byOrder = 0, byStart = 0;
        for (var r = 0; r < replicates; r++)
        {
            double[][] sessions = [.. player.Phase(setting, 0), .. player.Phase(setting, 0)];
            byOrder += Rejects([.. sessions.Select(session => session.Average())], order, orderLevel, draws) ? 1 : 0;
            byStart += Rejects([.. sessions.SelectMany(session => session)], start, startLevel, draws) ? 1 : 0;
        }

        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {setting.Sessions} | {setting.Swings} | {setting.SessionDeviation} | {setting.Dependence} | {100 * orderLevel:F1} | {100.0 * byOrder / replicates:F1} | {100 * startLevel:F1} | {100.0 * byStart / replicates:F1} |");
    }

    private static bool Rejects(double[] values, AssignmentScheme scheme, double level, Xoshiro256 draws)
    {
        var actual = new bool[scheme.Length];
        scheme.Draw(draws, actual);
        return RandomizationTest.Of(values, actual, scheme).PTwoSided <= level + 1e-12;
    }

    // p values are multiples of step / count: every order has its mirror image, with the same size of difference.
    private static double Level(double count, int step) => Math.Max(step, Math.Floor(Wanted * count / step) * step) / count;
}
