using System.Globalization;
using System.Text.RegularExpressions;

namespace SwingStudy.App.Studies;

/// <summary>Reasons of a design standard that are the same for several planned players, said once.</summary>
internal static partial class StandardReasons
{
    /// <summary>"3 points in baseline of players 1 to 8" for eight reasons that differ in the player alone.</summary>
    public static IEnumerable<string> Grouped(IEnumerable<string> reasons)
    {
        foreach (var alike in reasons.GroupBy(reason => Player().Replace(reason, "player #")))
        {
            List<int> players = [.. alike.Select(reason => Player().Match(reason)).Where(match => match.Success).Select(match => int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)).Order()];
            yield return players.Count < 2 ? alike.First() : alike.Key.Replace("player #", Named(players), StringComparison.Ordinal);
        }
    }

    private static string Named(List<int> players) => players[^1] - players[0] == players.Count - 1
        ? string.Create(CultureInfo.InvariantCulture, $"players {players[0]} to {players[^1]}")
        : $"players {string.Join(", ", players)}";

    [GeneratedRegex(@"\bplayer ([0-9]+)\b")]
    private static partial Regex Player();
}
