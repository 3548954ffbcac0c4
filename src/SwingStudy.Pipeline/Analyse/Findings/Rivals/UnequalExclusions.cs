using System.Globalization;

namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>Many more swings of one phase were left out than of the other.</summary>
internal static class UnequalExclusions
{
    /// <summary>Difference of the shares of swings without counted value from which exclusions count as unequal.</summary>
    private const double Unequal = 0.2;

    public static IEnumerable<Caveat> Find(ComparedPlayer player)
    {
        if (Lost(player, player.From) is { } before && Lost(player, player.To) is { } after && Math.Abs(before - after) > Unequal)
        {
            yield return new Caveat("unequal-exclusions", string.Create(CultureInfo.InvariantCulture,
                $"{100 * before:0} % of the swings in {player.From.Plain} and {100 * after:0} % in {player.To.Plain} have no value that counts: what is missing may be the worse swings"), true,
                "look at the excluded swings with 'swingstudy query' and decide, without looking at the phase, which of them count");
        }
    }

    private static double? Lost(ComparedPlayer player, PhaseSetting phase)
    {
        var struck = player.Player.Struck(phase.Name);
        return struck > 0 ? 1 - ((double)player.In(phase).Count() / struck) : null;
    }
}
