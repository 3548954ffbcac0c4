namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>Some day holds swings of both phases: within it, warming up and mood change along with the phase.</summary>
internal static class SharedDay
{
    public static IEnumerable<Caveat> Find(ComparedPlayer player)
    {
        var before = player.Player.Days(player.In(player.From));
        var after = player.Player.Days(player.In(player.To));
        if (before.Overlaps(after) && before.Union(after).Count() > 1)
            yield return new Caveat("shared-day", $"one day holds swings of {player.From.Plain} and of {player.To.Plain}: within it, warming up and fatigue changed along with the phase", false);
    }
}
