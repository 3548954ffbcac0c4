using System.Globalization;

namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>A ball, club, surface or other condition that changed together with the phase.</summary>
internal static class ChangedConditions
{
    /// <summary>Share of swings with another word up to which a difference is noted and stands in no verdict's way.</summary>
    private const double Stray = 0.1;

    /// <summary>More words than these and one are not named one by one.</summary>
    private const int MostNamed = 2;

    public static IEnumerable<Caveat> Find(ComparedPlayer player)
    {
        var meant = player.From.IsTransfer || player.To.IsTransfer;
        foreach (var condition in player.Settings.Conditions)
        {
            var (before, after) = (player.Player.Words(condition, player.From.Name), player.Player.Words(condition, player.To.Name));
            if (before.Count == 0 && after.Count == 0)
                continue;
            if (before.Count == 0 || after.Count == 0)
            {
                if (player.Estimate is not null)
                {
                    yield return new Caveat("condition-unknown", $"nobody wrote down the {Plain(condition)} in {(before.Count == 0 ? player.From : player.To).Plain}, so that another one cannot be ruled out", false,
                        $"write down the {Plain(condition)} of every session");
                }

                continue;
            }

            var moved = Distance(before, after);
            if (moved == 0)
                continue;
            var words = $"{Text(before)} in {player.From.Plain}, {Text(after)} in {player.To.Plain}";
            yield return meant
                ? new Caveat("condition-differs", $"the {Plain(condition)} differs, as the transfer phase intends: {words}", false)
                : moved <= Stray
                    ? new Caveat("condition-mixed", $"a few swings were struck with another {Plain(condition)}: {words}", false)
                    : new Caveat("condition-changed", $"the {Plain(condition)} changed together with the phase: {words}; what it does cannot be told from what the phase does", true,
                        $"repeat {player.To.Plain} with the {Plain(condition)} of {player.From.Plain} ({Text(before)})");
        }
    }

    /// <summary>Half of the summed differences of shares: 0 for the same mixture, 1 when no word is shared.</summary>
    internal static double Distance(IReadOnlyDictionary<string, double> before, IReadOnlyDictionary<string, double> after) =>
        before.Keys.Union(after.Keys, StringComparer.Ordinal).Sum(word => Math.Abs(before.GetValueOrDefault(word) - after.GetValueOrDefault(word))) / 2;

    /// <summary>"range", or "range (60 %), premium (40 %)"; of many words the most frequent ones, and how much the others are together.</summary>
    internal static string Text(IReadOnlyDictionary<string, double> shares)
    {
        if (shares.Count == 1)
            return shares.Keys.First();
        var ordered = shares.OrderByDescending(pair => pair.Value).ToList();
        var named = ordered.Take(ordered.Count > MostNamed + 1 ? MostNamed : ordered.Count).Select(pair => Share(pair.Key, pair.Value)).ToList();
        if (named.Count < ordered.Count)
            named.Add(Share(string.Create(CultureInfo.InvariantCulture, $"{ordered.Count - named.Count} others"), ordered.Skip(named.Count).Sum(pair => pair.Value)));
        return string.Join(", ", named);
    }

    private static string Share(string word, double share) => string.Create(CultureInfo.InvariantCulture, $"{word} ({100 * share:0} %)");

    private static string Plain(string condition) => condition.Replace('_', ' ');
}
