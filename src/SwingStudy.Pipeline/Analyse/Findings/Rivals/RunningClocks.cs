using System.Globalization;

namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>A device's clock ran off faster than clocks do, in sessions of one phase alone: the device may not have been well, and times need a look.</summary>
internal static class RunningClocks
{
    /// <summary>Drift beyond which a clock is doubted, in millionths (common practice, no source).</summary>
    private const double Usual = 200;

    public static IEnumerable<Caveat> Find(ComparedPlayer player)
    {
        if (player.Outcome.Kind is not (OutcomeKind.Moment or OutcomeKind.MomentBefore or OutcomeKind.Duration) || player.Estimate is null)
            yield break;
        var (before, after) = (Doubted(player, player.From), Doubted(player, player.To));
        foreach (var (source, drift) in before.Where(clock => !after.ContainsKey(clock.Key)))
            yield return Of(source, drift, player.From);
        foreach (var (source, drift) in after.Where(clock => !before.ContainsKey(clock.Key)))
            yield return Of(source, drift, player.To);
    }

    private static Caveat Of(string source, double drift, PhaseSetting phase) => new("clock-drift", string.Create(CultureInfo.InvariantCulture,
        $"the clock of {source} ran off by {Math.Abs(drift):0} millionths in {phase.Plain} alone, more than the {Usual:0} that clocks usually do: look at its times"), false);

    private static SortedDictionary<string, double> Doubted(ComparedPlayer player, PhaseSetting phase) => new(
        player.Player.Clocks(phase.Name).Where(clock => Math.Abs(clock.DriftPpm) > Usual).GroupBy(clock => clock.Source, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.MaxBy(clock => Math.Abs(clock.DriftPpm))!.DriftPpm), StringComparer.Ordinal);
}
