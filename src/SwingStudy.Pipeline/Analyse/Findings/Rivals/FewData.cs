using System.Globalization;

namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>Fewer sessions or swings than planned, or swings that count for fewer.</summary>
internal static class FewData
{
    /// <summary>Lag-one dependence from which it is worth a word.</summary>
    private const double NoticeableDependence = 0.3;

    public static IEnumerable<Caveat> Find(ComparedPlayer player)
    {
        foreach (var (phase, sessions) in player.Both.Zip([player.Change.SessionsBefore, player.Change.SessionsAfter]))
        {
            if (sessions < phase.MinimumSessions)
                yield return new Caveat("few-sessions", string.Create(CultureInfo.InvariantCulture, $"{Plural(sessions, "session")} in {phase.Plain}, planned were {phase.MinimumSessions}"), false);
        }

        foreach (var phase in player.Both)
        {
            var few = player.In(phase).GroupBy(value => value.Session, StringComparer.Ordinal).Count(session => session.Count() < phase.MinimumSwings);
            if (few > 0)
            {
                yield return new Caveat("few-swings", string.Create(CultureInfo.InvariantCulture,
                    $"{Plural(few, "session")} in {phase.Plain} with fewer than the planned {phase.MinimumSwings} swings that count"), false);
            }
        }

        if (player.Change.Dependence.Shrunk > NoticeableDependence)
            yield return new Caveat("neighbouring-swings-alike", "neighbouring swings resemble each other, so that they count for fewer", false);
    }

    private static string Plural(int count, string noun) => string.Create(CultureInfo.InvariantCulture, $"{count} {noun}{(count == 1 ? "" : "s")}");
}
