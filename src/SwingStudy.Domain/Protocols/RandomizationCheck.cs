using SwingStudy.Domain.Problems;

namespace SwingStudy.Domain.Protocols;

/// <summary>Whether what chance shall decide is said in full and fits the phases.</summary>
internal static class RandomizationCheck
{
    /// <summary>Contradictions of the draw, each with its line and mend.</summary>
    public static IEnumerable<Problem> Of(Protocol protocol)
    {
        if (protocol.Randomization is not { } draw)
            return [];
        var place = new Place(protocol.File, draw.Line);
        return draw.Kind switch
        {
            Randomization.Order or Randomization.OrderAndStart when protocol.Players is null => [PlayersMissing(place)],
            Randomization.Order or Randomization.OrderAndStart when protocol.Design != DesignKind.MultipleBaseline => [NotStaggered(place, draw.Kind)],
            Randomization.PhaseStart => [.. Window(protocol, draw, place, draw.EarliestSession, "'earliest_session' and 'latest_session'")],
            Randomization.OrderAndStart => [.. Window(protocol, draw, place, draw.EarliestSession ?? First(protocol), "'latest_session'")],
            Randomization.Order => [.. Early(protocol, place, draw.EarliestSession)],
            Randomization.PhaseChanges => [.. Changes(protocol, draw, place)],
            Randomization.Alternation when DrawPlan.Of(protocol) is null => [NoOrder(place, draw.LongestRun ?? Randomization.DefaultLongestRun)],
            _ => [],
        };
    }

    private static int? First(Protocol protocol) => protocol.Phases.FirstOrDefault(phase => phase.Role == PhaseRole.Baseline)?.MinimumSessions + 1;

    private static Problem PlayersMissing(Place place) => new(
        "draw-players",
        place,
        "the order of players is drawn, and their number is not planned",
        "'players: { planned: ..., why: ... }'",
        "Add 'players'.");

    private static Problem NotStaggered(Place place, string kind) => new(
        "draw-design",
        place,
        $"'{kind}' draws which player starts when, and the design does not stagger players",
        "'design: multiple-baseline'",
        "Change the design, or draw a 'phase-start' for each player.");

    private static Problem NoOrder(Place place, int longestRun) => new(
        "draw-alternation",
        place,
        FormattableString.Invariant($"no order of the sessions keeps each condition at {longestRun} in a row or fewer"),
        "numbers of sessions that can alternate, of a baseline and an intervention",
        "Make the 'minimum_sessions' of both conditions more alike, or raise 'longest_run'.");

    private static IEnumerable<Problem> Window(Protocol protocol, Randomization draw, Place place, int? earliest, string expected)
    {
        if (earliest is not { } from || draw.LatestSession is not { } latest)
        {
            yield return new("draw-window", place, "the start of the intervention is drawn without a window", expected, "Add both.");
            yield break;
        }

        if (from > latest)
            yield return new(
                "draw-window",
                place,
                "the drawn start has its earliest session after its latest",
                "earliest at most latest",
                "Swap the two.");
        foreach (var problem in Early(protocol, place, draw.EarliestSession))
            yield return problem;
    }

    private static IEnumerable<Problem> Early(Protocol protocol, Place place, int? earliest)
    {
        var baseline = protocol.Phases.FirstOrDefault(phase => phase.Role == PhaseRole.Baseline);
        if (baseline is not null && earliest <= baseline.MinimumSessions)
        {
            yield return new(
                "draw-window",
                place,
                FormattableString.Invariant($"the intervention may start at session {earliest}, and '{baseline.Name}' needs {baseline.MinimumSessions} sessions before"),
                FormattableString.Invariant($"'earliest_session' of {baseline.MinimumSessions + 1} or more"),
                "Move the window, or ask for fewer baseline sessions.");
        }
    }

    private static IEnumerable<Problem> Changes(Protocol protocol, Randomization draw, Place place)
    {
        var phases = DrawPlan.InTurn(protocol);
        if (phases.Count < 2)
        {
            yield return new(
                "draw-changes",
                place,
                "changes between phases are drawn, and the phases do not take turns",
                "baseline, intervention, baseline, intervention from the first phase on",
                "Reorder the phases, or draw a 'phase-start'.");
        }
        else if (DrawPlan.Of(protocol) is null)
        {
            var needed = phases.Count * phases.Max(phase => phase.MinimumSessions);
            yield return new(
                "draw-changes",
                place,
                draw.Sessions is { } sessions ? FormattableString.Invariant($"{sessions} sessions do not hold {phases.Count} phases of their least length") : "changes between phases are drawn, and 'sessions' does not say over how many sessions",
                FormattableString.Invariant($"'sessions' of {needed} or more"),
                "Set 'sessions'; each session more than the least gives more assignments.");
        }
    }
}
