using System.Globalization;
using SwingStudy.Domain.Findings;
using SwingStudy.Statistics.Planning;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>What would settle a comparison: how many more sessions, how many swings, which condition to hold.</summary>
/// <remarks>
/// Forecasts take the change and the noise as they stand now; they are for planning and no rule for stopping. A change that is not shown is planned for
/// by the power of the t test on session means for a change of the smallest worthwhile size.
/// </remarks>
internal static class NextSteps
{
    private const double PowerWanted = 0.8;
    private const int MostSessions = 40;
    private const int MostSwings = 40;

    /// <summary>The requests, the most useful first.</summary>
    public static IEnumerable<Reason> Of(PlayerChange player, Verdict verdict, FindingSettings settings)
    {
        foreach (var text in Texts(player, verdict, settings).Distinct(StringComparer.Ordinal))
            yield return new Reason(ReasonCode.ToSettle, text);
    }

    private static IEnumerable<string> Texts(PlayerChange player, Verdict verdict, FindingSettings settings)
    {
        var (from, to) = (player.Compared.From, player.Compared.To);
        if (verdict == Verdict.CannotTell)
        {
            yield return player.CannotTell?.Code == ReasonCode.OneDay
                ? $"measure {from.Quoted} and {to.Quoted} on different days, at least two sessions of each ({Swings(to.MinimumSwings)} each)"
                : Missing(player, from, to);
            yield break;
        }

        foreach (var mend in player.Caveats.Where(caveat => caveat.ForbidsSupport).Select(caveat => caveat.Mend).OfType<string>())
            yield return mend;
        if (player.Basis != Basis.Planned && verdict != Verdict.NotShown)
            yield return "name this comparison in the protocol of a new study before its data are taken";
        if (verdict == Verdict.Supported)
        {
            if (player.Contrast.ShareOf is null && Later(player, settings) is { } later)
                yield return $"the change itself is settled; whether it lasts or carries over is for {later} to show";
            yield break;
        }

        if (Forecast(player) is { } forecast)
            yield return forecast;
    }

    private static string Missing(PlayerChange player, PhaseSetting from, PhaseSetting to)
    {
        var needs = new List<string>();
        foreach (var (phase, sessions) in new[] { (from, player.Change.SessionsBefore), (to, player.Change.SessionsAfter) })
        {
            var more = Math.Max(2, Math.Max(1, phase.MinimumSessions)) - sessions;
            if (sessions < 2)
                needs.Add(string.Create(CultureInfo.InvariantCulture, $"{more} more {(more == 1 ? "session" : "sessions")} of {phase.Quoted}"));
        }

        return needs.Count == 0
            ? "record more than one swing a session"
            : $"record {string.Join(" and ", needs)} on other days, {Swings(Math.Max(2, to.MinimumSwings))} each; more swings of the same day cannot answer it";
    }

    private static string? Later(PlayerChange player, FindingSettings settings) =>
        settings.Contrasts.FirstOrDefault(contrast => contrast.ShareOf == player.Contrast.Name) is { } contrast ? settings.Phase(contrast.To).Quoted : null;

    private static string? Forecast(PlayerChange player)
    {
        var change = player.Change;
        if (player.Estimate is not { } estimate || change is not { SessionStandardDeviation: { } session, SwingStandardDeviation: { } swing } || session + swing <= 0)
            return null;
        var noise = new NoiseModel { Session = session, Swing = swing };
        var usual = Math.Max(1, (int)Math.Round((change.SwingsBefore + change.SwingsAfter) / (double)(change.SessionsBefore + change.SessionsAfter)));
        var worthwhile = player.Outcome.Worthwhile;
        var beyond = Math.Abs(estimate) > (worthwhile ?? 0);
        if (!beyond && worthwhile is { } size)
            return Planned(player, noise, usual, size);
        var limit = player.ExceedsNoise ? Math.CopySign(worthwhile ?? 0, estimate) : 0;
        var forecast = DecisionForecast.Of(
            estimate, limit, noise, new PhaseCounts(change.SessionsBefore, change.SwingsBefore), new PhaseCounts(change.SessionsAfter, change.SwingsAfter), usual, most: MostSessions);
        if (forecast.IsDecided)
            return worthwhile is { } worth ? Planned(player, noise, usual, worth) : null;
        var question = limit == 0 ? "it is more than noise" : "it is worthwhile";
        var (swings, sessions) = (forecast.MoreSwings, forecast.MoreSessions);
        if (sessions is not { } count)
        {
            return $"no number of further sessions of {player.Compared.To.Quoted} can tell whether {question}: {player.Compared.From.Quoted} itself is known too badly and would need more sessions"
                + (worthwhile is { } w && Planned(player, noise, usual, w) is { } plan ? $"; {plan}" : "");
        }

        var byDays = string.Create(CultureInfo.InvariantCulture, $"about {count} more {(count == 1 ? "session" : "sessions")} of {player.Compared.To.Quoted} with {Swings(usual)} would tell whether {question}, if the change stays what it is");
        return swings is { } more && more <= MostSwings
            ? string.Create(CultureInfo.InvariantCulture, $"{byDays}; or about {more} more {(more == 1 ? "swing" : "swings")} in the sessions there are")
            : $"{byDays}; more swings on the same days would not";
    }

    private static string? Planned(PlayerChange player, NoiseModel noise, int swings, double worthwhile)
    {
        var name = player.Compared.Quantity.Text(worthwhile, magnitude: true);
        return PrePostPower.SessionsNeeded(noise, players: 1, swings, worthwhile, PowerWanted, most: MostSessions) is { } sessions
            ? string.Create(CultureInfo.InvariantCulture, $"a change of {name} would be found with a chance of {100 * PowerWanted:0} % in {sessions} sessions of each phase with {Swings(swings)}")
            : string.Create(CultureInfo.InvariantCulture, $"a change of {name} is too small to be found with this player's scatter in {MostSessions} sessions of each phase");
    }

    private static string Swings(int count) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? "swing" : "swings")}");
}
