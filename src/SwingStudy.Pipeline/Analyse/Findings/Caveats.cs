using System.Globalization;
using SwingStudy.Domain.Tables;
using SwingStudy.Statistics.Change;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Looks for what could explain a change otherwise.</summary>
internal static class Caveats
{
    /// <summary>Difference of the shares of swings without counted value from which exclusions count as unequal.</summary>
    private const double UnequalShare = 0.2;

    /// <summary>Lag-one dependence from which it is worth a word.</summary>
    private const double NoticeableDependence = 0.3;

    /// <summary>The caveats of one player's change, the gravest first.</summary>
    /// <param name="swings">All swings of the player, counted or not.</param>
    /// <param name="values">Values of the outcome that count.</param>
    /// <param name="change">The change.</param>
    /// <param name="contrast">The contrast.</param>
    /// <param name="settings">Settings.</param>
    public static IReadOnlyList<Caveat> Of(
        RowSet swings, IReadOnlyList<CountedValue> values, HonestChange change, ContrastSetting contrast, FindingSettings settings)
    {
        var caveats = new List<Caveat>();
        caveats.AddRange(ChangedConditions(swings, contrast, settings));
        caveats.AddRange(FewSessions(change, contrast, settings));
        caveats.AddRange(FewSwings(values, contrast, settings));
        caveats.AddRange(UnequalExclusions(swings, values, contrast));
        if (change.Dependence.Shrunk > NoticeableDependence)
            caveats.Add(new Caveat("neighbouring-swings-alike", "neighbouring swings resemble each other, so that they count for fewer", false));
        if (!settings.IsRandomized)
            caveats.Add(new Caveat("not-randomized", "nobody drew by lot when the cue came: whatever else changed at that time is an explanation too", false));
        return caveats;
    }

    private static IEnumerable<Caveat> ChangedConditions(RowSet swings, ContrastSetting contrast, FindingSettings settings)
    {
        var meant = settings.Phase(contrast.From).IsTransfer || settings.Phase(contrast.To).IsTransfer;
        foreach (var condition in settings.Conditions)
        {
            var (before, after) = (Words(swings, condition, contrast.From), Words(swings, condition, contrast.To));
            if (before.Length == 0 || after.Length == 0 || before == after)
                continue;
            yield return meant
                ? new Caveat("condition-differs", $"{condition} differs as the transfer phase intends ({before}; {after})", false)
                : new Caveat("condition-changed", $"{condition} changed with the phase ({before} in {contrast.From}, {after} in {contrast.To})", true);
        }
    }

    private static string Words(RowSet swings, string condition, string phase)
    {
        var (phases, included, words) = (swings.Texts("phase"), swings.Booleans("included"), swings.Texts(condition));
        return string.Join(", ", Enumerable.Range(0, swings.Count).Where(i => phases[i] == phase && included[i] == true && words[i] is not null)
            .Select(i => words[i]!).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
    }

    private static IEnumerable<Caveat> FewSessions(HonestChange change, ContrastSetting contrast, FindingSettings settings)
    {
        foreach (var (phase, sessions) in new[] { (settings.Phase(contrast.From), change.SessionsBefore), (settings.Phase(contrast.To), change.SessionsAfter) })
        {
            if (sessions < phase.MinimumSessions)
            {
                yield return new Caveat("few-sessions", string.Create(CultureInfo.InvariantCulture,
                    $"{Plural(sessions, "session")} in {phase.Name}, planned were {phase.MinimumSessions}"), false);
            }
        }
    }

    private static IEnumerable<Caveat> FewSwings(IReadOnlyList<CountedValue> values, ContrastSetting contrast, FindingSettings settings)
    {
        foreach (var name in new[] { contrast.From, contrast.To })
        {
            var phase = settings.Phase(name);
            var few = values.Where(value => value.Phase == name).GroupBy(value => value.Session, StringComparer.Ordinal).Count(session => session.Count() < phase.MinimumSwings);
            if (few > 0)
            {
                yield return new Caveat("few-swings", string.Create(CultureInfo.InvariantCulture,
                    $"{Plural(few, "session")} in {name} with fewer than the planned {phase.MinimumSwings} swings that count"), false);
            }
        }
    }

    private static IEnumerable<Caveat> UnequalExclusions(RowSet swings, IReadOnlyList<CountedValue> values, ContrastSetting contrast)
    {
        if (Lost(swings, values, contrast.From) is { } before && Lost(swings, values, contrast.To) is { } after && Math.Abs(before - after) > UnequalShare)
        {
            yield return new Caveat("unequal-exclusions", string.Create(CultureInfo.InvariantCulture,
                $"{100 * before:0} % of the swings in {contrast.From} and {100 * after:0} % in {contrast.To} have no value that counts"), true);
        }
    }

    private static double? Lost(RowSet swings, IReadOnlyList<CountedValue> values, string phase)
    {
        var (phases, practice) = (swings.Texts("phase"), swings.Booleans("is_practice"));
        var struck = Enumerable.Range(0, swings.Count).Count(i => phases[i] == phase && practice[i] != true);
        return struck > 0 ? 1 - ((double)values.Count(value => value.Phase == phase) / struck) : null;
    }

    private static string Plural(int count, string noun) => string.Create(CultureInfo.InvariantCulture, $"{count} {noun}{(count == 1 ? "" : "s")}");
}
